-- What was said of an instrument at a visit, for the diagnosis; stretches of work whose minutes were put right; and what
-- a job is priced with beside its hours. Money as exact decimals, in text.

CREATE TABLE visit_sayings (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  about TEXT NOT NULL CHECK (about IN ('symptom', 'fact')),
  name TEXT NOT NULL,
  holds INTEGER NOT NULL CHECK (holds IN (0, 1)),
  day TEXT NOT NULL CHECK (length(day) = 10),
  who TEXT NOT NULL
) STRICT;
CREATE INDEX visit_sayings_of_visit ON visit_sayings (visit_id);

CREATE TABLE work_corrections (
  id INTEGER PRIMARY KEY,
  spell_id INTEGER NOT NULL REFERENCES work_spells (id),
  minutes INTEGER NOT NULL CHECK (minutes >= 0),
  finished INTEGER NOT NULL CHECK (finished IN (0, 1)),
  day TEXT NOT NULL CHECK (length(day) = 10),
  who TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX work_corrections_of_spell ON work_corrections (spell_id);

CREATE TABLE job_materials (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  name TEXT NOT NULL,
  quantity TEXT NOT NULL,
  unit_price TEXT NOT NULL
) STRICT;
CREATE INDEX job_materials_of_job ON job_materials (job_id);

CREATE TABLE job_terms (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  fixed_price TEXT NOT NULL,
  tax_percent TEXT NOT NULL,
  risk TEXT NOT NULL
) STRICT;
CREATE INDEX job_terms_of_job ON job_terms (job_id);

CREATE TRIGGER visit_sayings_are_never_changed BEFORE UPDATE ON visit_sayings
BEGIN
  SELECT RAISE(ABORT, 'what was said is never changed: a later one stands');
END;
CREATE TRIGGER visit_sayings_are_never_removed BEFORE DELETE ON visit_sayings
BEGIN
  SELECT RAISE(ABORT, 'what was said is never removed');
END;
CREATE TRIGGER work_corrections_are_never_changed BEFORE UPDATE ON work_corrections
BEGIN
  SELECT RAISE(ABORT, 'corrections are never changed: a later one stands');
END;
CREATE TRIGGER work_corrections_are_never_removed BEFORE DELETE ON work_corrections
BEGIN
  SELECT RAISE(ABORT, 'corrections are never removed');
END;
CREATE TRIGGER job_materials_are_never_changed BEFORE UPDATE ON job_materials
BEGIN
  SELECT RAISE(ABORT, 'materials of a job are never changed: a later one stands');
END;
CREATE TRIGGER job_materials_are_never_removed BEFORE DELETE ON job_materials
BEGIN
  SELECT RAISE(ABORT, 'materials of a job are never removed');
END;
CREATE TRIGGER job_terms_are_never_changed BEFORE UPDATE ON job_terms
BEGIN
  SELECT RAISE(ABORT, 'terms of a job are never changed: a later one stands');
END;
CREATE TRIGGER job_terms_are_never_removed BEFORE DELETE ON job_terms
BEGIN
  SELECT RAISE(ABORT, 'terms of a job are never removed');
END;
