-- Each person of the shop says what they leave to others, instead of what they can do, which no page ever asked.
UPDATE settings
SET value = json_set(value, '$.people', (
  SELECT json_group_array(json(json_set(json_remove(person.value, '$.skills'), '$.leaves_to_others', json('[]'))))
  FROM json_each(settings.value, '$.people') AS person
))
WHERE name = 'shop';
