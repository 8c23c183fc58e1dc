-- Numbers every change to what the lists of instruments, owners and homes show or search, so that a program which holds
-- them in memory takes in what changed since it last looked, whoever changed it. One row a record; within a list the
-- greatest number is the newest change, and the changes of one statement share a number.

CREATE TABLE list_changes (
  list TEXT NOT NULL CHECK (list IN ('instruments', 'owners', 'homes')),
  id INTEGER NOT NULL,
  number INTEGER NOT NULL,
  PRIMARY KEY (list, id)
) STRICT, WITHOUT ROWID;
CREATE INDEX list_changes_by_number ON list_changes (list, number);

INSERT INTO list_changes (list, id, number) SELECT 'instruments', id, 1 FROM instruments;
INSERT INTO list_changes (list, id, number) SELECT 'owners', id, 1 FROM owners;
INSERT INTO list_changes (list, id, number) SELECT 'homes', id, 1 FROM homes;

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
