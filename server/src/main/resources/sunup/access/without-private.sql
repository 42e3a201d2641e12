-- What is left out of a backup that may be kept longer than private values (SQLite).
-- Only this says whose the pseudonyms of a morning's plan were.
DELETE FROM access_sign_on;
DELETE FROM access_tries;
DELETE FROM access_pairing;
DELETE FROM access_push;
