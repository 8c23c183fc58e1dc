-- What a survey finds on an instrument, where on its drawing, and what a later visit says of it. Findings and what is
-- said of them are only ever added: one that corrects another names it in supersedes, and the corrected one stays.
-- Places are millimetres on the view's own axes (src/body/instrument_drawing.h).

-- A photo is kept once, whole with its thumbnail: upright JPEG without the camera's own notes. Not changed once kept.
CREATE TABLE photos (
  id INTEGER PRIMARY KEY,
  sha256 TEXT NOT NULL UNIQUE CHECK (length(sha256) = 64),
  width_px INTEGER NOT NULL,
  height_px INTEGER NOT NULL,
  thumbnail BLOB NOT NULL,
  whole BLOB NOT NULL
) STRICT;

CREATE TRIGGER photos_are_never_changed BEFORE UPDATE ON photos
BEGIN
  SELECT RAISE(ABORT, 'photos are never changed');
END;

CREATE TABLE findings (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  kind TEXT NOT NULL,
  view TEXT NOT NULL CHECK (view IN
    ('front', 'back', 'bass_side', 'treble_side', 'headstock', 'top_inside', 'back_inside')),
  shape TEXT NOT NULL CHECK (shape IN ('point', 'line', 'area')),
  place TEXT NOT NULL,
  part TEXT NOT NULL,
  part_from_mm REAL,
  part_to_mm REAL,
  opening TEXT NOT NULL CHECK (opening IN ('not_said', 'tight', 'open')),
  moving TEXT NOT NULL CHECK (moving IN ('not_said', 'still', 'moves')),
  severity TEXT NOT NULL CHECK (severity IN ('slight', 'moderate', 'serious')),
  certainty TEXT NOT NULL CHECK (certainty IN ('suspected', 'likely', 'sure')),
  withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
  supersedes INTEGER REFERENCES findings (id) CHECK (supersedes < id),
  note TEXT NOT NULL
) STRICT;
CREATE INDEX findings_of_visit ON findings (visit_id);
CREATE UNIQUE INDEX findings_superseding ON findings (supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE finding_points (
  record_id INTEGER NOT NULL REFERENCES findings (id),
  number INTEGER NOT NULL,
  x_mm REAL NOT NULL,
  y_mm REAL NOT NULL,
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE finding_extents (
  record_id INTEGER NOT NULL REFERENCES findings (id),
  number INTEGER NOT NULL,
  measure TEXT NOT NULL,
  typed TEXT NOT NULL,
  value_mm REAL NOT NULL,
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE finding_photos (
  record_id INTEGER NOT NULL REFERENCES findings (id),
  number INTEGER NOT NULL,
  photo_id INTEGER NOT NULL REFERENCES photos (id),
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;

-- What a later visit says of a finding.
CREATE TABLE finding_changes (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  finding_id INTEGER NOT NULL REFERENCES findings (id),
  state TEXT NOT NULL CHECK (state IN ('unchanged', 'grown', 'repaired', 'gone')),
  supersedes INTEGER REFERENCES finding_changes (id) CHECK (supersedes < id),
  note TEXT NOT NULL
) STRICT;
CREATE INDEX finding_changes_of_visit ON finding_changes (visit_id);
CREATE INDEX finding_changes_of_finding ON finding_changes (finding_id);
CREATE UNIQUE INDEX finding_changes_superseding ON finding_changes (supersedes) WHERE supersedes IS NOT NULL;

CREATE TABLE finding_change_extents (
  record_id INTEGER NOT NULL REFERENCES finding_changes (id),
  number INTEGER NOT NULL,
  measure TEXT NOT NULL,
  typed TEXT NOT NULL,
  value_mm REAL NOT NULL,
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;

CREATE TABLE finding_change_photos (
  record_id INTEGER NOT NULL REFERENCES finding_changes (id),
  number INTEGER NOT NULL,
  photo_id INTEGER NOT NULL REFERENCES photos (id),
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;

CREATE VIEW findings_and_corrections AS
SELECT finding.*, correction.id AS superseded_by
FROM findings AS finding LEFT JOIN findings AS correction ON correction.supersedes = finding.id;

CREATE VIEW finding_changes_and_corrections AS
SELECT change.*, correction.id AS superseded_by
FROM finding_changes AS change LEFT JOIN finding_changes AS correction ON correction.supersedes = change.id;

CREATE TRIGGER findings_are_never_changed BEFORE UPDATE ON findings
BEGIN
  SELECT RAISE(ABORT, 'findings are never changed: add one that supersedes it');
END;
CREATE TRIGGER findings_are_never_removed BEFORE DELETE ON findings
BEGIN
  SELECT RAISE(ABORT, 'findings are never removed: add one that supersedes it');
END;
CREATE TRIGGER finding_points_are_never_changed BEFORE UPDATE ON finding_points
BEGIN
  SELECT RAISE(ABORT, 'findings are never changed: add one that supersedes it');
END;
CREATE TRIGGER finding_points_are_never_removed BEFORE DELETE ON finding_points
BEGIN
  SELECT RAISE(ABORT, 'findings are never removed: add one that supersedes it');
END;
CREATE TRIGGER finding_extents_are_never_changed BEFORE UPDATE ON finding_extents
BEGIN
  SELECT RAISE(ABORT, 'findings are never changed: add one that supersedes it');
END;
CREATE TRIGGER finding_extents_are_never_removed BEFORE DELETE ON finding_extents
BEGIN
  SELECT RAISE(ABORT, 'findings are never removed: add one that supersedes it');
END;
CREATE TRIGGER finding_photos_are_never_changed BEFORE UPDATE ON finding_photos
BEGIN
  SELECT RAISE(ABORT, 'findings are never changed: add one that supersedes it');
END;
CREATE TRIGGER finding_photos_are_never_removed BEFORE DELETE ON finding_photos
BEGIN
  SELECT RAISE(ABORT, 'findings are never removed: add one that supersedes it');
END;
CREATE TRIGGER finding_changes_are_never_changed BEFORE UPDATE ON finding_changes
BEGIN
  SELECT RAISE(ABORT, 'what a visit says of a finding is never changed: add one that supersedes it');
END;
CREATE TRIGGER finding_changes_are_never_removed BEFORE DELETE ON finding_changes
BEGIN
  SELECT RAISE(ABORT, 'what a visit says of a finding is never removed: add one that supersedes it');
END;
CREATE TRIGGER finding_change_extents_are_never_changed BEFORE UPDATE ON finding_change_extents
BEGIN
  SELECT RAISE(ABORT, 'what a visit says of a finding is never changed: add one that supersedes it');
END;
CREATE TRIGGER finding_change_extents_are_never_removed BEFORE DELETE ON finding_change_extents
BEGIN
  SELECT RAISE(ABORT, 'what a visit says of a finding is never removed: add one that supersedes it');
END;
CREATE TRIGGER finding_change_photos_are_never_changed BEFORE UPDATE ON finding_change_photos
BEGIN
  SELECT RAISE(ABORT, 'what a visit says of a finding is never changed: add one that supersedes it');
END;
CREATE TRIGGER finding_change_photos_are_never_removed BEFORE DELETE ON finding_change_photos
BEGIN
  SELECT RAISE(ABORT, 'what a visit says of a finding is never removed: add one that supersedes it');
END;
