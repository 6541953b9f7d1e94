-- An alarm as it is after its last step. A living one names its kind and subject in `living`, so that the database too
-- refuses a second one; one that is over has null there.
create table alarm (
    id                  uuid             not null primary key,
    kind                varchar(40)      not null,
    subject             varchar(200)     not null,
    state               varchar(40)      not null,
    cover               varchar(40)      not null,
    living              varchar(250) unique,
    raised_wall_millis  bigint           not null,
    raised_wall_quality varchar(40)      not null,
    body                varchar(1000000) not null
);

create table alarm_step (
    alarm_id           uuid          not null references alarm (id),
    sequence           bigint        not null,
    step               varchar(40)   not null,
    state_before       varchar(40)   not null,
    cover_before       varchar(40)   not null,
    state_after        varchar(40)   not null,
    cover_after        varchar(40)   not null,
    who                varchar(200)  not null,
    reason             varchar(2000) not null,
    cause_event_millis bigint        not null,
    cause_line         varchar(4000) not null,
    wall_millis        bigint        not null,
    wall_quality       varchar(40)   not null,
    primary key (alarm_id, sequence)
);

create table outbox (
    number               bigint           not null primary key,
    id                   uuid             not null unique,
    alarm_id             uuid             not null references alarm (id),
    outlet               varchar(40)      not null,
    rings                boolean          not null,
    body                 varchar(1000000) not null,
    written_wall_millis  bigint           not null,
    written_wall_quality varchar(40)      not null,
    sent_wall_millis     bigint
);

create index outbox_unsent on outbox (outlet, sent_wall_millis, number);
