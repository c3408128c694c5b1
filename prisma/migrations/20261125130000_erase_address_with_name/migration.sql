-- An e-mail address names a person as the name itself does: erasing takes both. Those who were erased before lose
-- theirs here; the account keeps its id, which the record knows.
UPDATE account SET email = account.account_id || '@erased.invalid', secret_hash = ''
FROM person
WHERE person.site_id = account.site_id AND person.person_id = account.person_id AND person.erased_at IS NOT NULL;
