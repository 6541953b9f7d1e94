-- The last batch of facts that was committed, so that one whose commit was cut off is not committed twice, and whose
-- database this is, so that facts that wait on a disk never go into another one. H2 is part of the service and needs neither.
create table if not exists committed_batch (
    number      bigint not null,
    database_id uuid   not null
);

insert into committed_batch (number, database_id)
select 0, gen_random_uuid()
where not exists (select 1 from committed_batch);
