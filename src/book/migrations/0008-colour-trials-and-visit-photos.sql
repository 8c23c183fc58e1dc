-- Trials of a colour on something other than the instrument, and photos of a visit as a whole. Both are only ever added: a
-- trial that says more of another, or corrects it, names it in supersedes; of one photo at one visit the latest row stands.

CREATE TABLE finish_trials (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  kind TEXT NOT NULL CHECK (kind IN ('tint', 'burst', 'stain', 'clear')),
  aim TEXT NOT NULL,
  carrier TEXT NOT NULL,
  mix TEXT NOT NULL,
  dilution TEXT NOT NULL,
  substrate TEXT NOT NULL,
  application TEXT NOT NULL,
  result TEXT NOT NULL,
  verdict TEXT NOT NULL CHECK (verdict IN ('not_yet', 'keep', 'sand_off')),
  day TEXT NOT NULL CHECK (length(day) = 10),
  who TEXT NOT NULL,
  withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
  supersedes INTEGER REFERENCES finish_trials (id) CHECK (supersedes < id),
  note TEXT NOT NULL
) STRICT;
CREATE INDEX finish_trials_of_visit ON finish_trials (visit_id);
CREATE UNIQUE INDEX finish_trials_superseding ON finish_trials (supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE finish_trial_photos (
  record_id INTEGER NOT NULL REFERENCES finish_trials (id),
  number INTEGER NOT NULL,
  photo_id INTEGER NOT NULL REFERENCES photos (id),
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;

CREATE VIEW finish_trials_and_corrections AS
SELECT trial.*, correction.id AS superseded_by
FROM finish_trials AS trial LEFT JOIN finish_trials AS correction ON correction.supersedes = trial.id;

CREATE TABLE visit_photos (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  photo_id INTEGER NOT NULL REFERENCES photos (id),
  words TEXT NOT NULL,
  left_out INTEGER NOT NULL CHECK (left_out IN (0, 1))
) STRICT;
CREATE INDEX visit_photos_of_visit ON visit_photos (visit_id);

CREATE TRIGGER finish_trials_are_never_changed BEFORE UPDATE ON finish_trials
BEGIN
  SELECT RAISE(ABORT, 'trials are never changed: add one that supersedes it');
END;
CREATE TRIGGER finish_trials_are_never_removed BEFORE DELETE ON finish_trials
BEGIN
  SELECT RAISE(ABORT, 'trials are never removed: add one that supersedes it');
END;
CREATE TRIGGER finish_trial_photos_are_never_changed BEFORE UPDATE ON finish_trial_photos
BEGIN
  SELECT RAISE(ABORT, 'trials are never changed: add one that supersedes it');
END;
CREATE TRIGGER finish_trial_photos_are_never_removed BEFORE DELETE ON finish_trial_photos
BEGIN
  SELECT RAISE(ABORT, 'trials are never removed: add one that supersedes it');
END;
CREATE TRIGGER visit_photos_are_never_changed BEFORE UPDATE ON visit_photos
BEGIN
  SELECT RAISE(ABORT, 'what a visit shows is never changed: a later row stands');
END;
CREATE TRIGGER visit_photos_are_never_removed BEFORE DELETE ON visit_photos
BEGIN
  SELECT RAISE(ABORT, 'what a visit shows is never removed: a later row stands');
END;
