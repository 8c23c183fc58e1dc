-- A book as the program with schema number 9 left it, as text. Never edited.
PRAGMA application_id = 1413636715;
PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE migrations (number INTEGER PRIMARY KEY, name TEXT NOT NULL, applied_at TEXT NOT NULL);
INSERT INTO migrations VALUES(1,'the-shops-records','2026-01-01 12:00:00');
INSERT INTO migrations VALUES(2,'what-changed-in-the-lists','2026-01-02 12:00:00');
INSERT INTO migrations VALUES(3,'the-rod-among-the-choices','2026-01-03 12:00:00');
INSERT INTO migrations VALUES(4,'findings-and-photos','2026-01-04 12:00:00');
INSERT INTO migrations VALUES(5,'jobs-and-work','2026-01-05 12:00:00');
INSERT INTO migrations VALUES(6,'said-corrected-and-priced','2026-01-06 12:00:00');
INSERT INTO migrations VALUES(7,'papers-given','2026-01-07 12:00:00');
INSERT INTO migrations VALUES(8,'colour-trials-and-visit-photos','2026-01-08 12:00:00');
INSERT INTO migrations VALUES(9,'arriving-and-finishing-once','2026-01-09 12:00:00');
INSERT INTO migrations VALUES(10,'work-left-to-others','2026-01-10 12:00:00');
CREATE TABLE settings (
  name TEXT PRIMARY KEY,
  value TEXT NOT NULL
) STRICT;
INSERT INTO settings VALUES('shop name','the bench');
INSERT INTO settings VALUES('shop','{"name":"the bench","address":"","people":[{"name":"Ann","hours":[{"weekday":1,"from_minute":540,"to_minute":1050},{"weekday":2,"from_minute":540,"to_minute":1050}],"days_off":[{"day":"2026-03-02"}],"leaves_to_others":[]},{"name":"Ben","hours":[{"weekday":6,"from_minute":540,"to_minute":780}],"days_off":[],"leaves_to_others":["spraying"]}],"stations":[{"name":"clamps","count":3}],"currency":"EUR","hourly_rate":"72.50","tax_percent":"19","terms":"Ask.","how_to_pay":"","promise_chance":0.85}');
CREATE TABLE owners (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  contact TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;
INSERT INTO owners VALUES(1,'Zoë Farmer','by post','');
INSERT INTO owners VALUES(2,'A. Player','','left-handed');
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
INSERT INTO homes VALUES(1,'stone house','outdoor_months',19.5,2.5,0.34999999999999997779,0.59999999999999997779,0.040000000000000000832,5.0,'river side');
INSERT INTO homes VALUES(2,'flat','indoor_months',20.0,2.0,0.0,1.0,0.050000000000000002775,6.0,'');
CREATE TABLE home_months (
  home_id INTEGER NOT NULL REFERENCES homes (id),
  month INTEGER NOT NULL CHECK (month BETWEEN 1 AND 12),
  temperature_c REAL NOT NULL,
  relative_humidity REAL NOT NULL,
  dew_point_c REAL NOT NULL,
  PRIMARY KEY (home_id, month)
) STRICT, WITHOUT ROWID;
INSERT INTO home_months VALUES(1,1,3.0,0.30999999999999999777,-2.0);
INSERT INTO home_months VALUES(1,2,4.0,0.32000000000000000666,-1.0);
INSERT INTO home_months VALUES(1,3,5.0,0.32999999999999996003,0.0);
INSERT INTO home_months VALUES(1,4,6.0,0.33999999999999996891,1.0);
INSERT INTO home_months VALUES(1,5,7.0,0.34999999999999997779,2.0);
INSERT INTO home_months VALUES(1,6,8.0,0.35999999999999998667,3.0);
INSERT INTO home_months VALUES(1,7,9.0,0.36999999999999999555,4.0);
INSERT INTO home_months VALUES(1,8,10.0,0.38000000000000000444,5.0);
INSERT INTO home_months VALUES(1,9,11.0,0.39000000000000001332,6.0);
INSERT INTO home_months VALUES(1,10,12.0,0.4000000000000000222,7.0);
INSERT INTO home_months VALUES(1,11,13.0,0.40999999999999997557,8.0);
INSERT INTO home_months VALUES(1,12,14.0,0.41999999999999998445,9.0);
INSERT INTO home_months VALUES(2,1,3.0,0.30999999999999999777,-2.0);
INSERT INTO home_months VALUES(2,2,4.0,0.32000000000000000666,-1.0);
INSERT INTO home_months VALUES(2,3,5.0,0.32999999999999996003,0.0);
INSERT INTO home_months VALUES(2,4,6.0,0.33999999999999996891,1.0);
INSERT INTO home_months VALUES(2,5,7.0,0.34999999999999997779,2.0);
INSERT INTO home_months VALUES(2,6,8.0,0.35999999999999998667,3.0);
INSERT INTO home_months VALUES(2,7,9.0,0.36999999999999999555,4.0);
INSERT INTO home_months VALUES(2,8,10.0,0.38000000000000000444,5.0);
INSERT INTO home_months VALUES(2,9,11.0,0.39000000000000001332,6.0);
INSERT INTO home_months VALUES(2,10,12.0,0.4000000000000000222,7.0);
INSERT INTO home_months VALUES(2,11,13.0,0.40999999999999997557,8.0);
INSERT INTO home_months VALUES(2,12,14.0,0.41999999999999998445,9.0);
CREATE TABLE air_days (
  home_id INTEGER NOT NULL REFERENCES homes (id),
  date TEXT NOT NULL CHECK (length(date) = 10),
  temperature_c REAL NOT NULL,
  relative_humidity REAL NOT NULL,
  PRIMARY KEY (home_id, date)
) STRICT, WITHOUT ROWID;
INSERT INTO air_days VALUES(1,'2025-01-01',18.5,0.33000000000000001554);
INSERT INTO air_days VALUES(1,'2025-01-02',18.75,0.34000000000000002442);
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
INSERT INTO instruments VALUES(1,1,1,'the blackened parlour','about 1910','parlour','ladder',342.0,2.6000000000000000888,12.0,'red spruce',1,622.0,12,18,0,'open_ended',3.5,2.5,108.0,'light','standard','hard',1.984375,1.5,2.7999999999999998223,2.2000000000000001776,'bar frets');
INSERT INTO instruments VALUES(2,2,2,'plain square','','square_large','x_braced',NULL,NULL,0.0,'',0,645.0,14,20,1,'closed',NULL,NULL,NULL,'light','standard','medium',NULL,NULL,NULL,NULL,'');
CREATE TABLE visits (
  id INTEGER PRIMARY KEY,
  instrument_id INTEGER NOT NULL REFERENCES instruments (id),
  date TEXT NOT NULL CHECK (length(date) = 10),
  reason TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;
INSERT INTO visits VALUES(1,1,'2025-02-14','strings too low','');
INSERT INTO visits VALUES(2,1,'2025-08-20','well again','humid week');
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
INSERT INTO readings VALUES(1,1,'action12_bass','4/64',1.5874999999999999111,'ruler_64ths',0.14999999999999999444,'as_found',NULL,'');
INSERT INTO readings VALUES(2,1,'action12_bass','5/64',1.984375,'ruler_64ths',0.14999999999999999444,'as_found',1,'misread');
INSERT INTO readings VALUES(3,2,'relief','.008',0.20319999999999999173,'feelers',0.029999999999999998889,'as_left',NULL,'');
CREATE TABLE interventions (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  kind TEXT NOT NULL,
  action12_bass_change_mm REAL,
  action12_treble_change_mm REAL,
  change_sd_mm REAL,
  note TEXT NOT NULL
) STRICT;
INSERT INTO interventions VALUES(1,1,'saddle_lowered',-0.25,NULL,0.050000000000000002775,'');
CREATE TABLE list_changes (
  list TEXT NOT NULL CHECK (list IN ('instruments', 'owners', 'homes')),
  id INTEGER NOT NULL,
  number INTEGER NOT NULL,
  PRIMARY KEY (list, id)
) STRICT, WITHOUT ROWID;
INSERT INTO list_changes VALUES('homes',1,1);
INSERT INTO list_changes VALUES('homes',2,1);
INSERT INTO list_changes VALUES('instruments',1,1);
INSERT INTO list_changes VALUES('instruments',2,1);
INSERT INTO list_changes VALUES('owners',1,1);
INSERT INTO list_changes VALUES('owners',2,1);
CREATE TABLE IF NOT EXISTS "saddle_decisions" (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  choice TEXT NOT NULL CHECK (choice IN ('leave', 'turn_rod', 'one_saddle', 'two_saddles', 'humid_room', 'neck_angle')),
  raise_bass_at_saddle_mm REAL NOT NULL,
  raise_treble_at_saddle_mm REAL NOT NULL,
  set_bass_at_fret12_mm REAL NOT NULL,
  set_treble_at_fret12_mm REAL NOT NULL,
  reason TEXT NOT NULL
) STRICT;
INSERT INTO saddle_decisions VALUES(1,1,'two_saddles',0.5,0.4000000000000000222,2.3999999999999999111,1.8999999999999999111,'dry winters');
CREATE TABLE photos (
  id INTEGER PRIMARY KEY,
  sha256 TEXT NOT NULL UNIQUE CHECK (length(sha256) = 64),
  width_px INTEGER NOT NULL,
  height_px INTEGER NOT NULL,
  thumbnail BLOB NOT NULL,
  whole BLOB NOT NULL
) STRICT;
INSERT INTO photos VALUES(1,'92b2fa58028958317e408bd84ecfa70f5ee35b121991dbc232c49d166353708b',4,3,X'736d616c6c',X'612070696374757265');
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
INSERT INTO findings VALUES(1,1,'crack','front','line','lower bout, bass side','',NULL,NULL,'open','still','moderate','sure',0,NULL,'');
INSERT INTO findings VALUES(2,1,'crack','front','line','lower bout, bass side','',NULL,NULL,'open','still','serious','sure',0,1,'longer than it looked');
CREATE TABLE finding_points (
  record_id INTEGER NOT NULL REFERENCES findings (id),
  number INTEGER NOT NULL,
  x_mm REAL NOT NULL,
  y_mm REAL NOT NULL,
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO finding_points VALUES(1,1,300.0,-60.0);
INSERT INTO finding_points VALUES(1,2,350.0,-60.0);
INSERT INTO finding_points VALUES(2,1,300.0,-60.0);
INSERT INTO finding_points VALUES(2,2,362.5,-61.0);
CREATE TABLE finding_extents (
  record_id INTEGER NOT NULL REFERENCES findings (id),
  number INTEGER NOT NULL,
  measure TEXT NOT NULL,
  typed TEXT NOT NULL,
  value_mm REAL NOT NULL,
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO finding_extents VALUES(2,1,'crack_length','62 mm',62.0);
CREATE TABLE finding_photos (
  record_id INTEGER NOT NULL REFERENCES findings (id),
  number INTEGER NOT NULL,
  photo_id INTEGER NOT NULL REFERENCES photos (id),
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO finding_photos VALUES(2,1,1);
CREATE TABLE finding_changes (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  finding_id INTEGER NOT NULL REFERENCES findings (id),
  state TEXT NOT NULL CHECK (state IN ('unchanged', 'grown', 'repaired', 'gone')),
  supersedes INTEGER REFERENCES finding_changes (id) CHECK (supersedes < id),
  note TEXT NOT NULL
) STRICT;
INSERT INTO finding_changes VALUES(1,2,2,'unchanged',NULL,'');
INSERT INTO finding_changes VALUES(2,2,2,'grown',1,'');
CREATE TABLE finding_change_extents (
  record_id INTEGER NOT NULL REFERENCES finding_changes (id),
  number INTEGER NOT NULL,
  measure TEXT NOT NULL,
  typed TEXT NOT NULL,
  value_mm REAL NOT NULL,
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO finding_change_extents VALUES(2,1,'crack_length','80 mm',80.0);
CREATE TABLE finding_change_photos (
  record_id INTEGER NOT NULL REFERENCES finding_changes (id),
  number INTEGER NOT NULL,
  photo_id INTEGER NOT NULL REFERENCES photos (id),
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO finding_change_photos VALUES(2,1,1);
CREATE TABLE jobs (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  finding_id INTEGER REFERENCES findings (id),
  procedure TEXT NOT NULL,
  advice TEXT NOT NULL CHECK (advice IN ('do_now', 'can_wait', 'leave_alone')),
  withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1)),
  note TEXT NOT NULL
) STRICT;
INSERT INTO jobs VALUES(1,1,1,'top_crack','do_now',0,'before the winter');
INSERT INTO jobs VALUES(2,1,NULL,'set_up','can_wait',0,'');
CREATE TABLE job_answers (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  decision TEXT NOT NULL,
  outcome TEXT NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  who TEXT NOT NULL
) STRICT;
INSERT INTO job_answers VALUES(1,1,'still','yes','2025-08-21','Ada');
CREATE TABLE job_amounts (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  amount TEXT NOT NULL,
  count REAL NOT NULL
) STRICT;
INSERT INTO job_amounts VALUES(1,1,'cleats',5.0);
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
, labour TEXT NOT NULL DEFAULT '', materials TEXT NOT NULL DEFAULT '', tax_percent TEXT NOT NULL DEFAULT '', visit_net TEXT NOT NULL DEFAULT '', visit_tax TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO job_offers VALUES(1,1,'2025-08-21','Crack glued',2.0,3.0,5.0,'245.00','0.00','EUR','','','','','');
INSERT INTO job_offers VALUES(2,2,'2025-08-22','Saddle, with the rate kept',1.0,1.5,2.0,'60.00','11.40','EUR','50.00','10.00','19','','');
INSERT INTO job_offers VALUES(3,2,'2025-08-23','Saddle, arriving and finishing beside it',0.5,0.8,1.2,'40.00','7.60','EUR','30.00','10.00','19','31.50','5.99');
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
INSERT INTO owner_words VALUES(1,1,1,'','yes','2025-08-22','A. Player');
CREATE TABLE material_lots (
  id INTEGER PRIMARY KEY,
  material TEXT NOT NULL,
  words TEXT NOT NULL,
  opened_on TEXT NOT NULL CHECK (length(opened_on) = 10),
  good_until TEXT,
  empty_on TEXT,
  note TEXT NOT NULL
) STRICT;
INSERT INTO material_lots VALUES(1,'hide_glue','batch 3','2025-08-01','2025-08-25',NULL,'');
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
INSERT INTO work_spells VALUES(1,1,'record_arrival','Ada','2025-08-22',600,'2025-08-22',612,1,NULL,'');
INSERT INTO work_spells VALUES(2,1,'glue_crack_hide','Ada','2025-08-22',700,NULL,0,0,1,'');
CREATE TABLE gate_overrides (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  who TEXT NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  why TEXT NOT NULL
) STRICT;
INSERT INTO gate_overrides VALUES(1,1,'Ada','2025-08-21','played tonight');
CREATE TABLE promises (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  ready_on TEXT NOT NULL CHECK (length(ready_on) = 10),
  chance REAL NOT NULL CHECK (chance BETWEEN 0 AND 1),
  said_on TEXT NOT NULL CHECK (length(said_on) = 10)
) STRICT;
INSERT INTO promises VALUES(1,1,'2025-09-05',0.8000000000000000444,'2025-08-21');
CREATE TABLE bench_wishes (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  due_on TEXT CHECK (length(due_on) = 10),
  weight REAL NOT NULL,
  waits_until TEXT CHECK (length(waits_until) = 10),
  note TEXT NOT NULL
) STRICT;
INSERT INTO bench_wishes VALUES(1,1,'2025-09-04',1.0,NULL,'');
CREATE TABLE pins (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  operation TEXT NOT NULL,
  which INTEGER NOT NULL CHECK (which > 0),
  day TEXT CHECK (length(day) = 10),
  minute INTEGER NOT NULL CHECK (minute BETWEEN 0 AND 1439)
) STRICT;
INSERT INTO pins VALUES(1,1,'glue_crack_hide',1,'2025-08-22',700);
CREATE TABLE shop_air (
  id INTEGER PRIMARY KEY,
  day TEXT NOT NULL CHECK (length(day) = 10),
  minute INTEGER NOT NULL CHECK (minute BETWEEN 0 AND 1439),
  temperature_c REAL NOT NULL,
  relative_humidity REAL NOT NULL CHECK (relative_humidity BETWEEN 0 AND 1),
  forecast INTEGER NOT NULL CHECK (forecast IN (0, 1))
) STRICT;
INSERT INTO shop_air VALUES(1,'2025-08-22',720,21.0,0.46999999999999997335,0);
CREATE TABLE handovers (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL UNIQUE REFERENCES visits (id),
  day TEXT NOT NULL CHECK (length(day) = 10),
  taken_by TEXT NOT NULL
) STRICT;
CREATE TABLE visit_sayings (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  about TEXT NOT NULL CHECK (about IN ('symptom', 'fact')),
  name TEXT NOT NULL,
  holds INTEGER NOT NULL CHECK (holds IN (0, 1)),
  day TEXT NOT NULL CHECK (length(day) = 10),
  who TEXT NOT NULL
) STRICT;
INSERT INTO visit_sayings VALUES(1,1,'symptom','buzz',1,'2025-08-21','A. Player');
CREATE TABLE work_corrections (
  id INTEGER PRIMARY KEY,
  spell_id INTEGER NOT NULL REFERENCES work_spells (id),
  minutes INTEGER NOT NULL CHECK (minutes >= 0),
  finished INTEGER NOT NULL CHECK (finished IN (0, 1)),
  day TEXT NOT NULL CHECK (length(day) = 10),
  who TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;
INSERT INTO work_corrections VALUES(1,1,15,1,'2025-08-23','Ada','tapped late');
CREATE TABLE job_materials (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  name TEXT NOT NULL,
  quantity TEXT NOT NULL,
  unit_price TEXT NOT NULL
) STRICT;
INSERT INTO job_materials VALUES(1,1,'cleats','5','1.20');
CREATE TABLE job_terms (
  id INTEGER PRIMARY KEY,
  job_id INTEGER NOT NULL REFERENCES jobs (id),
  fixed_price TEXT NOT NULL,
  tax_percent TEXT NOT NULL,
  risk TEXT NOT NULL
) STRICT;
INSERT INTO job_terms VALUES(1,1,'','19','the crack may show');
CREATE TABLE papers (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  kind TEXT NOT NULL CHECK (kind IN ('claim_ticket', 'estimate', 'owners_report', 'invoice')),
  number TEXT NOT NULL,
  day TEXT NOT NULL CHECK (length(day) = 10),
  sha256 TEXT NOT NULL CHECK (length(sha256) = 64),
  says TEXT NOT NULL,
  UNIQUE (kind, number)
) STRICT;
INSERT INTO papers VALUES(1,1,'estimate','2025-0001','2025-08-21','6995bc393eaeaeb4d0c110f7915124bedea79e6502ae1a899cfcc90931ac8e44','{"number":"2025-0001"}');
INSERT INTO papers VALUES(2,1,'invoice','2025-0001','2025-09-02','6995bc393eaeaeb4d0c110f7915124bedea79e6502ae1a899cfcc90931ac8e44','{"number":"2025-0001"}');
CREATE TABLE invoiced_offers (
  offer_id INTEGER PRIMARY KEY REFERENCES job_offers (id),
  paper_id INTEGER NOT NULL REFERENCES papers (id)
) STRICT;
INSERT INTO invoiced_offers VALUES(1,2);
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
INSERT INTO finish_trials VALUES(1,1,'tint','the amber of the lower bout','nc_lacquer','amber 6 drops in 30 ml','1 : 1 with thinner','spruce offcut','two passes','','not_yet','2025-08-20','Ada',0,NULL,'');
INSERT INTO finish_trials VALUES(2,1,'tint','the amber of the lower bout','nc_lacquer','amber 6 drops in 30 ml','1 : 1 with thinner','spruce offcut','two passes','right by daylight','keep','2025-08-22','Ada',0,1,'');
CREATE TABLE finish_trial_photos (
  record_id INTEGER NOT NULL REFERENCES finish_trials (id),
  number INTEGER NOT NULL,
  photo_id INTEGER NOT NULL REFERENCES photos (id),
  PRIMARY KEY (record_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO finish_trial_photos VALUES(2,1,1);
CREATE TABLE visit_photos (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  photo_id INTEGER NOT NULL REFERENCES photos (id),
  words TEXT NOT NULL,
  left_out INTEGER NOT NULL CHECK (left_out IN (0, 1))
) STRICT;
INSERT INTO visit_photos VALUES(1,1,1,'',0);
INSERT INTO visit_photos VALUES(2,1,1,'as it came',0);
CREATE INDEX instruments_of_owner ON instruments (owner_id);
CREATE INDEX instruments_of_home ON instruments (home_id);
CREATE INDEX visits_of_instrument ON visits (instrument_id, date, id);
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
CREATE VIEW readings_and_corrections AS
SELECT reading.*, correction.id AS superseded_by
FROM readings AS reading LEFT JOIN readings AS correction ON correction.supersedes = reading.id;
CREATE INDEX interventions_of_visit ON interventions (visit_id);
CREATE INDEX list_changes_by_number ON list_changes (list, number);
CREATE TRIGGER lists_take_new_instrument AFTER INSERT ON instruments
BEGIN
  INSERT INTO list_changes (list, id, number)
  VALUES ('instruments', new.id, (SELECT coalesce(max(number), 0) + 1 FROM list_changes WHERE list = 'instruments'));
END;
CREATE TRIGGER lists_take_new_owner AFTER INSERT ON owners
BEGIN
  INSERT INTO list_changes (list, id, number)
  VALUES ('owners', new.id, (SELECT coalesce(max(number), 0) + 1 FROM list_changes WHERE list = 'owners'));
END;
CREATE TRIGGER lists_take_new_home AFTER INSERT ON homes
BEGIN
  INSERT INTO list_changes (list, id, number)
  VALUES ('homes', new.id, (SELECT coalesce(max(number), 0) + 1 FROM list_changes WHERE list = 'homes'));
END;
CREATE TRIGGER lists_take_changed_instrument AFTER UPDATE ON instruments
BEGIN
  UPDATE list_changes SET number = (SELECT coalesce(max(number), 0) + 1 FROM list_changes WHERE list = 'instruments')
  WHERE list = 'instruments' AND id = new.id;
END;
CREATE TRIGGER lists_take_new_visit AFTER INSERT ON visits
BEGIN
  UPDATE list_changes SET number = (SELECT coalesce(max(number), 0) + 1 FROM list_changes WHERE list = 'instruments')
  WHERE list = 'instruments' AND id = new.instrument_id;
END;
CREATE TRIGGER lists_take_changed_visit AFTER UPDATE ON visits
BEGIN
  UPDATE list_changes SET number = (SELECT coalesce(max(number), 0) + 1 FROM list_changes WHERE list = 'instruments')
  WHERE list = 'instruments' AND id IN (old.instrument_id, new.instrument_id);
END;
CREATE TRIGGER lists_take_renamed_owner AFTER UPDATE OF name ON owners
BEGIN
  UPDATE list_changes SET number = (SELECT coalesce(max(number), 0) + 1 FROM list_changes WHERE list = 'owners')
  WHERE list = 'owners' AND id = new.id;
  UPDATE list_changes SET number = (SELECT coalesce(max(number), 0) + 1 FROM list_changes WHERE list = 'instruments')
  WHERE list = 'instruments' AND id IN (SELECT id FROM instruments WHERE owner_id = new.id);
END;
CREATE TRIGGER lists_take_renamed_home AFTER UPDATE OF name ON homes
BEGIN
  UPDATE list_changes SET number = (SELECT coalesce(max(number), 0) + 1 FROM list_changes WHERE list = 'homes')
  WHERE list = 'homes' AND id = new.id;
  UPDATE list_changes SET number = (SELECT coalesce(max(number), 0) + 1 FROM list_changes WHERE list = 'instruments')
  WHERE list = 'instruments' AND id IN (SELECT id FROM instruments WHERE home_id = new.id);
END;
CREATE INDEX saddle_decisions_of_visit ON saddle_decisions (visit_id);
CREATE TRIGGER photos_are_never_changed BEFORE UPDATE ON photos
BEGIN
  SELECT RAISE(ABORT, 'photos are never changed');
END;
CREATE INDEX findings_of_visit ON findings (visit_id);
CREATE UNIQUE INDEX findings_superseding ON findings (supersedes) WHERE supersedes IS NOT NULL;
CREATE INDEX finding_changes_of_visit ON finding_changes (visit_id);
CREATE INDEX finding_changes_of_finding ON finding_changes (finding_id);
CREATE UNIQUE INDEX finding_changes_superseding ON finding_changes (supersedes) WHERE supersedes IS NOT NULL;
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
CREATE INDEX jobs_of_visit ON jobs (visit_id);
CREATE INDEX job_answers_of_job ON job_answers (job_id);
CREATE INDEX job_amounts_of_job ON job_amounts (job_id);
CREATE INDEX job_offers_of_job ON job_offers (job_id);
CREATE INDEX owner_words_of_job ON owner_words (job_id);
CREATE INDEX work_spells_of_job ON work_spells (job_id);
CREATE INDEX gate_overrides_of_visit ON gate_overrides (visit_id);
CREATE INDEX promises_of_visit ON promises (visit_id);
CREATE INDEX bench_wishes_of_visit ON bench_wishes (visit_id);
CREATE INDEX pins_of_job ON pins (job_id);
CREATE INDEX shop_air_by_day ON shop_air (day);
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
CREATE INDEX visit_sayings_of_visit ON visit_sayings (visit_id);
CREATE INDEX work_corrections_of_spell ON work_corrections (spell_id);
CREATE INDEX job_materials_of_job ON job_materials (job_id);
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
CREATE INDEX papers_of_visit ON papers (visit_id);
CREATE INDEX invoiced_offers_of_paper ON invoiced_offers (paper_id);
CREATE TRIGGER papers_are_never_changed BEFORE UPDATE ON papers
BEGIN
  SELECT RAISE(ABORT, 'papers that were given are never changed');
END;
CREATE TRIGGER papers_are_never_removed BEFORE DELETE ON papers
BEGIN
  SELECT RAISE(ABORT, 'papers that were given are never removed');
END;
CREATE TRIGGER invoiced_offers_are_never_changed BEFORE UPDATE ON invoiced_offers
BEGIN
  SELECT RAISE(ABORT, 'what an invoice asks for is never changed');
END;
CREATE TRIGGER invoiced_offers_are_never_removed BEFORE DELETE ON invoiced_offers
BEGIN
  SELECT RAISE(ABORT, 'what an invoice asks for is never removed');
END;
CREATE INDEX finish_trials_of_visit ON finish_trials (visit_id);
CREATE UNIQUE INDEX finish_trials_superseding ON finish_trials (supersedes) WHERE supersedes IS NOT NULL;
CREATE VIEW finish_trials_and_corrections AS
SELECT trial.*, correction.id AS superseded_by
FROM finish_trials AS trial LEFT JOIN finish_trials AS correction ON correction.supersedes = trial.id;
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
COMMIT;
