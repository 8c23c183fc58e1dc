-- What an offered line needs of arriving and finishing, beside its own price: an invoice asks for the greatest of its
-- lines, once. Empty in older offers, whose price has it inside.
ALTER TABLE job_offers ADD COLUMN visit_net TEXT NOT NULL DEFAULT '';
ALTER TABLE job_offers ADD COLUMN visit_tax TEXT NOT NULL DEFAULT '';
