-- What a person asked for and was done, by the key of the request: asked again with that key it is answered, not done again.
create table receipt (
    request_key  varchar(200)  not null primary key,
    request_hash varchar(64)   not null,
    passage_id   uuid          not null references passage (id),
    sequence     bigint        not null,
    board        varchar(64)   not null,
    channel      smallint      not null,
    phase        varchar(40)   not null,
    reason       varchar(4000) not null,
    wall_millis  bigint        not null,
    wall_quality varchar(40)   not null
);

-- Each time the service opened its records; the numbers of live events begin with that of their run, so that they never fall.
create table service_run (
    number             bigint generated always as identity primary key,
    opened_wall_millis bigint not null
);
