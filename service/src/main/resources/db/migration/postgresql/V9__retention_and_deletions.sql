-- For how long the records of a passage that is over must be kept; no row: nobody said.
create table retention (
    days integer not null
);

-- What was deleted, when, by whom and why; never deleted itself.
create table deletion (
    id                 uuid          not null primary key,
    passage_id         uuid          not null,
    tag                varchar(200)  not null,
    board              varchar(64)   not null,
    opened_wall_millis bigint        not null,
    closed_reason      varchar(2000) not null,
    who                varchar(200)  not null,
    reason             varchar(2000) not null,
    journal_rows       integer       not null,
    segments           integer       not null,
    wall_millis        bigint        not null,
    wall_quality       varchar(40)   not null
);

-- Where the chain of a channel goes on over segments that were deleted: from the hash before them to the hash of the last.
create table deleted_segments (
    deletion_id        uuid        not null references deletion (id),
    board              varchar(64) not null,
    channel            smallint    not null,
    first_event_millis bigint      not null,
    last_event_millis  bigint      not null,
    before_hash        bytea       not null check (octet_length(before_hash) = 32),
    last_hash          bytea       not null check (octet_length(last_hash) = 32),
    primary key (board, channel, first_event_millis)
);
