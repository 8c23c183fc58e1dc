-- Papers given to the owner, as they were: what each said is kept whole, and written out again from that alone. Money as
-- exact decimals, in text. What an offer was made of is kept with it; of older ones only the sum is known.

ALTER TABLE job_offers ADD COLUMN labour TEXT NOT NULL DEFAULT '';
ALTER TABLE job_offers ADD COLUMN materials TEXT NOT NULL DEFAULT '';
ALTER TABLE job_offers ADD COLUMN tax_percent TEXT NOT NULL DEFAULT '';

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
CREATE INDEX papers_of_visit ON papers (visit_id);

-- What an invoice asks to be paid for: an offer that was said yes to, once.
CREATE TABLE invoiced_offers (
  offer_id INTEGER PRIMARY KEY REFERENCES job_offers (id),
  paper_id INTEGER NOT NULL REFERENCES papers (id)
) STRICT;
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
