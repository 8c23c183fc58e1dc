-- Lengths are millimetres and say so; dates are ISO text; humidity and the like are fractions, 0..1.

CREATE TABLE settings (
  name TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT;

CREATE TABLE owners (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  contact TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;

CREATE TABLE homes (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('indoor_months', 'outdoor_months')),
  heating_set_point_c REAL NOT NULL,
  moisture_gain_g_per_m3 REAL NOT NULL,
  humidifier_floor REAL NOT NULL,
  dehumidifier_ceiling REAL NOT NULL,
  weather_sd_relative_humidity REAL NOT NULL,
  weather_memory_days REAL NOT NULL,
  note TEXT NOT NULL
) STRICT;

-- The twelve months of a home's typical year, January being 1.
CREATE TABLE home_months (
  home_id INTEGER NOT NULL REFERENCES homes (id),
  month INTEGER NOT NULL CHECK (month BETWEEN 1 AND 12),
  temperature_c REAL NOT NULL,
  relative_humidity REAL NOT NULL,
  dew_point_c REAL NOT NULL,
  PRIMARY KEY (home_id, month)
) STRICT, WITHOUT ROWID;

-- Daily means of a hygrometer in the home, corrected for its own error.
CREATE TABLE air_days (
  home_id INTEGER NOT NULL REFERENCES homes (id),
  date TEXT NOT NULL CHECK (length(date) = 10),
  temperature_c REAL NOT NULL,
  relative_humidity REAL NOT NULL,
  PRIMARY KEY (home_id, date)
) STRICT, WITHOUT ROWID;

CREATE TABLE instruments (
  id INTEGER PRIMARY KEY,
  owner_id INTEGER NOT NULL REFERENCES owners (id),
  home_id INTEGER NOT NULL REFERENCES homes (id),
  name TEXT NOT NULL,
  made TEXT NOT NULL,
  body_size TEXT NOT NULL,
  bracing TEXT NOT NULL,
  lower_bout_width_mm REAL,
  top_thickness_mm REAL,
  ring_angle_deg REAL NOT NULL,
  top_species TEXT NOT NULL,
  kept_in_case INTEGER NOT NULL CHECK (kept_in_case IN (0, 1)),
  scale_length_mm REAL NOT NULL,
  body_joint_fret INTEGER NOT NULL,
  fret_count INTEGER NOT NULL,
  adjustable_rod INTEGER NOT NULL CHECK (adjustable_rod IN (0, 1)),
  slot TEXT NOT NULL CHECK (slot IN ('open_ended', 'closed')),
  slot_depth_mm REAL,
  slot_width_mm REAL,
  slot_length_mm REAL,
  string_set TEXT NOT NULL,
  tuning TEXT NOT NULL,
  attack TEXT NOT NULL CHECK (attack IN ('soft', 'medium', 'hard')),
  wanted_action12_bass_mm REAL,
  wanted_action12_treble_mm REAL,
  highest_action12_bass_mm REAL,
  highest_action12_treble_mm REAL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX instruments_of_owner ON instruments (owner_id);
CREATE INDEX instruments_of_home ON instruments (home_id);

CREATE TABLE visits (
  id INTEGER PRIMARY KEY,
  instrument_id INTEGER NOT NULL REFERENCES instruments (id),
  date TEXT NOT NULL CHECK (length(date) = 10),
  reason TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX visits_of_instrument ON visits (instrument_id, date, id);

-- Readings are only ever added. One that corrects another names it in supersedes; the corrected one stays as it was.
-- A reading is superseded when another row names it, at most one does.
CREATE TABLE readings (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  measure TEXT NOT NULL,
  typed TEXT NOT NULL,
  value REAL NOT NULL,
  gauge TEXT NOT NULL,
  gauge_sd REAL NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('as_found', 'as_left')),
  supersedes INTEGER REFERENCES readings (id) CHECK (supersedes < id),
  note TEXT NOT NULL
) STRICT;
CREATE INDEX readings_of_visit ON readings (visit_id);
CREATE UNIQUE INDEX readings_superseding ON readings (supersedes) WHERE supersedes IS NOT NULL;

CREATE TRIGGER readings_are_never_changed BEFORE UPDATE ON readings
BEGIN
  SELECT RAISE(ABORT, 'readings are never changed: add one that supersedes it');
END;
CREATE TRIGGER readings_are_never_removed BEFORE DELETE ON readings
BEGIN
  SELECT RAISE(ABORT, 'readings are never removed: add one that supersedes it');
END;

-- Each reading with the one that corrects it, where there is one.
CREATE VIEW readings_and_corrections AS
SELECT reading.*, correction.id AS superseded_by
FROM readings AS reading LEFT JOIN readings AS correction ON correction.supersedes = reading.id;

CREATE TABLE interventions (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  kind TEXT NOT NULL,
  action12_bass_change_mm REAL,
  action12_treble_change_mm REAL,
  change_sd_mm REAL,
  note TEXT NOT NULL
) STRICT;
CREATE INDEX interventions_of_visit ON interventions (visit_id);

CREATE TABLE saddle_decisions (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  choice TEXT NOT NULL CHECK (choice IN ('one_saddle', 'two_saddles', 'humid_room', 'neck_angle', 'leave')),
  raise_bass_at_saddle_mm REAL NOT NULL,
  raise_treble_at_saddle_mm REAL NOT NULL,
  set_bass_at_fret12_mm REAL NOT NULL,
  set_treble_at_fret12_mm REAL NOT NULL,
  reason TEXT NOT NULL
) STRICT;
CREATE INDEX saddle_decisions_of_visit ON saddle_decisions (visit_id);
