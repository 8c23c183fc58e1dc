-- Repairs chosen at a visit, and what was answered, offered, said and done of them. The plan of a job is worked out from
-- these facts and is not kept. Facts are only ever added; a job may be changed, a stretch of work is ended once, a lot closed.

CREATE TABLE jobs (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  finding_id INTEGER REFERENCES findings (id),
  procedure TEXT NOT NULL,
  advice TEXT NOT NULL CHECK (advice IN ('do_now', 'can_wait', 'leave_alone')),
  withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
  note TEXT NOT NULL
) STRICT;
CREATE INDEX jobs_of_visit ON jobs (visit_id);

CREATE TABLE job_answers (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  decision TEXT NOT NULL,
  outcome TEXT NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  who TEXT NOT NULL
) STRICT;
CREATE INDEX job_answers_of_job ON job_answers (job_id);

CREATE TABLE job_amounts (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  amount TEXT NOT NULL,
  count REAL NOT NULL
) STRICT;
CREATE INDEX job_amounts_of_job ON job_amounts (job_id);

-- Money as exact decimals, in text.
CREATE TABLE job_offers (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  day TEXT NOT NULL CHECK (length(day) = 10),
  words TEXT NOT NULL,
  hours_low REAL NOT NULL,
  hours REAL NOT NULL,
  hours_high REAL NOT NULL,
  net TEXT NOT NULL,
  tax TEXT NOT NULL,
  currency TEXT NOT NULL
) STRICT;
CREATE INDEX job_offers_of_job ON job_offers (job_id);

CREATE TABLE owner_words (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  offer_id INTEGER REFERENCES job_offers (id),
  operation TEXT NOT NULL,
  says TEXT NOT NULL CHECK (says IN ('yes', 'no')),
  day TEXT NOT NULL CHECK (length(day) = 10),
  who TEXT NOT NULL,
  CHECK ((offer_id IS NULL) = (operation <> ''))
) STRICT;
CREATE INDEX owner_words_of_job ON owner_words (job_id);

CREATE TABLE material_lots (
  id INTEGER PRIMARY KEY,
  material TEXT NOT NULL,
  words TEXT NOT NULL,
  opened_on TEXT NOT NULL CHECK (length(opened_on) = 10),
  good_until TEXT,
  empty_on TEXT,
  note TEXT NOT NULL
) STRICT;

CREATE TABLE work_spells (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  operation TEXT NOT NULL,
  person TEXT NOT NULL,
  began_on TEXT NOT NULL CHECK (length(began_on) = 10),
  began_minute INTEGER NOT NULL CHECK (began_minute BETWEEN 0 AND 1439),
  ended_on TEXT CHECK (length(ended_on) = 10),
  ended_minute INTEGER NOT NULL CHECK (ended_minute BETWEEN 0 AND 1439),
  finished INTEGER NOT NULL CHECK (finished IN (0, 1)),
  lot_id INTEGER REFERENCES material_lots (id),
  note TEXT NOT NULL,
  CHECK (ended_on IS NULL OR ended_on > began_on OR (ended_on = began_on AND ended_minute >= began_minute)),
  CHECK (ended_on IS NOT NULL OR finished = 0)
) STRICT;
CREATE INDEX work_spells_of_job ON work_spells (job_id);

CREATE TABLE gate_overrides (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  who TEXT NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  why TEXT NOT NULL
) STRICT;
CREATE INDEX gate_overrides_of_visit ON gate_overrides (visit_id);

CREATE TABLE promises (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  ready_on TEXT NOT NULL CHECK (length(ready_on) = 10),
  chance REAL NOT NULL CHECK (chance BETWEEN 0 AND 1),
  said_on TEXT NOT NULL CHECK (length(said_on) = 10)
) STRICT;
CREATE INDEX promises_of_visit ON promises (visit_id);

CREATE TABLE bench_wishes (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  due_on TEXT CHECK (length(due_on) = 10),
  weight REAL NOT NULL,
  waits_until TEXT CHECK (length(waits_until) = 10),
  note TEXT NOT NULL
) STRICT;
CREATE INDEX bench_wishes_of_visit ON bench_wishes (visit_id);

CREATE TABLE pins (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  operation TEXT NOT NULL,
  which INTEGER NOT NULL CHECK (which > 0),
  day TEXT CHECK (length(day) = 10),
  minute INTEGER NOT NULL CHECK (minute BETWEEN 0 AND 1439)
) STRICT;
CREATE INDEX pins_of_job ON pins (job_id);

-- The shop's own air, read or forecast.
CREATE TABLE shop_air (
  id INTEGER PRIMARY KEY,
  day TEXT NOT NULL CHECK (length(day) = 10),
  minute INTEGER NOT NULL CHECK (minute BETWEEN 0 AND 1439),
  temperature_c REAL NOT NULL,
  relative_humidity REAL NOT NULL CHECK (relative_humidity BETWEEN 0 AND 1),
  forecast INTEGER NOT NULL CHECK (forecast IN (0, 1))
) STRICT;
CREATE INDEX shop_air_by_day ON shop_air (day);

CREATE TABLE handovers (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL UNIQUE REFERENCES visits (id),
  day TEXT NOT NULL CHECK (length(day) = 10),
  taken_by TEXT NOT NULL
) STRICT;

CREATE TRIGGER a_stretch_of_work_is_ended_once BEFORE UPDATE ON work_spells WHEN old.ended_on IS NOT NULL
BEGIN
  SELECT RAISE(ABORT, 'a stretch of work is ended once');
END;
CREATE TRIGGER job_answers_are_never_changed BEFORE UPDATE ON job_answers
BEGIN
  SELECT RAISE(ABORT, 'answers are never changed: a later one stands');
END;
CREATE TRIGGER job_amounts_are_never_changed BEFORE UPDATE ON job_amounts
BEGIN
  SELECT RAISE(ABORT, 'amounts are never changed: a later one stands');
END;
CREATE TRIGGER job_offers_are_never_changed BEFORE UPDATE ON job_offers
BEGIN
  SELECT RAISE(ABORT, 'offers are never changed: a later one stands');
END;
CREATE TRIGGER owner_words_are_never_changed BEFORE UPDATE ON owner_words
BEGIN
  SELECT RAISE(ABORT, 'words of an owner are never changed: a later one stands');
END;
CREATE TRIGGER gate_overrides_are_never_changed BEFORE UPDATE ON gate_overrides
BEGIN
  SELECT RAISE(ABORT, 'overrides of the humidity gate are never changed: a later one stands');
END;
CREATE TRIGGER promises_are_never_changed BEFORE UPDATE ON promises
BEGIN
  SELECT RAISE(ABORT, 'promises are never changed: a later one stands');
END;
CREATE TRIGGER handovers_are_never_changed BEFORE UPDATE ON handovers
BEGIN
  SELECT RAISE(ABORT, 'handovers are never changed: a later one stands');
END;
CREATE TRIGGER job_answers_are_never_removed BEFORE DELETE ON job_answers
BEGIN
  SELECT RAISE(ABORT, 'answers are never removed');
END;
CREATE TRIGGER job_amounts_are_never_removed BEFORE DELETE ON job_amounts
BEGIN
  SELECT RAISE(ABORT, 'amounts are never removed');
END;
CREATE TRIGGER job_offers_are_never_removed BEFORE DELETE ON job_offers
BEGIN
  SELECT RAISE(ABORT, 'offers are never removed');
END;
CREATE TRIGGER owner_words_are_never_removed BEFORE DELETE ON owner_words
BEGIN
  SELECT RAISE(ABORT, 'words of an owner are never removed');
END;
CREATE TRIGGER gate_overrides_are_never_removed BEFORE DELETE ON gate_overrides
BEGIN
  SELECT RAISE(ABORT, 'overrides of the humidity gate are never removed');
END;
CREATE TRIGGER promises_are_never_removed BEFORE DELETE ON promises
BEGIN
  SELECT RAISE(ABORT, 'promises are never removed');
END;
CREATE TRIGGER handovers_are_never_removed BEFORE DELETE ON handovers
BEGIN
  SELECT RAISE(ABORT, 'handovers are never removed');
END;
CREATE TRIGGER work_spells_are_never_removed BEFORE DELETE ON work_spells
BEGIN
  SELECT RAISE(ABORT, 'stretches of work are never removed');
END;
CREATE TRIGGER bench_wishes_are_never_changed BEFORE UPDATE ON bench_wishes
BEGIN
  SELECT RAISE(ABORT, 'wishes are never changed: a later one stands');
END;
CREATE TRIGGER bench_wishes_are_never_removed BEFORE DELETE ON bench_wishes
BEGIN
  SELECT RAISE(ABORT, 'wishes are never removed');
END;
CREATE TRIGGER pins_are_never_changed BEFORE UPDATE ON pins
BEGIN
  SELECT RAISE(ABORT, 'pins are never changed: a later one stands');
END;
CREATE TRIGGER pins_are_never_removed BEFORE DELETE ON pins
BEGIN
  SELECT RAISE(ABORT, 'pins are never removed');
END;
CREATE TRIGGER shop_air_are_never_changed BEFORE UPDATE ON shop_air
BEGIN
  SELECT RAISE(ABORT, 'readings of the air are never changed: a later one stands');
END;
CREATE TRIGGER shop_air_are_never_removed BEFORE DELETE ON shop_air
BEGIN
  SELECT RAISE(ABORT, 'readings of the air are never removed');
END;
