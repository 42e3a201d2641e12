-- Who was refused, and when: an accepted command says so in its events.
ALTER TABLE receipt ADD COLUMN refused_by text, ADD COLUMN refused_at bigint;
