-- What was proven before a night, by whom, and for which passages. One that never ended was broken off with its service.
create table evening_check (
    id                   uuid             not null primary key,
    request_key          varchar(200)     not null unique,
    started_by           varchar(200)     not null,
    started_wall_millis  bigint           not null,
    started_wall_quality varchar(40)      not null,
    ended_wall_millis    bigint,
    verdict              varchar(40),
    body                 varchar(1000000) not null
);

create table evening_check_passage (
    check_id   uuid not null references evening_check (id),
    passage_id uuid not null references passage (id),
    primary key (check_id, passage_id)
);
