-- Turning the rod is one of the choices that can be kept.

CREATE TABLE saddle_decisions_with_rod (
  id INTEGER PRIMARY KEY,
  visit_id INTEGER NOT NULL REFERENCES visits (id),
  choice TEXT NOT NULL CHECK (choice IN ('leave', 'turn_rod', 'one_saddle', 'two_saddles', 'humid_room', 'neck_angle')),
  raise_bass_at_saddle_mm REAL NOT NULL,
  raise_treble_at_saddle_mm REAL NOT NULL,
  set_bass_at_fret12_mm REAL NOT NULL,
  set_treble_at_fret12_mm REAL NOT NULL,
  reason TEXT NOT NULL
) STRICT;
INSERT INTO saddle_decisions_with_rod SELECT * FROM saddle_decisions;
DROP TABLE saddle_decisions;
ALTER TABLE saddle_decisions_with_rod RENAME TO saddle_decisions;
CREATE INDEX saddle_decisions_of_visit ON saddle_decisions (visit_id);
