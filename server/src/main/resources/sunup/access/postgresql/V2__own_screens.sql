-- 1 for a browser of one person, which nobody paired at a desk: known while that person is signed on.
ALTER TABLE access_screen ADD COLUMN own INTEGER NOT NULL DEFAULT 0;
