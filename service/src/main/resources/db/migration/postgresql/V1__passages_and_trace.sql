-- What a board said of itself; segments name the hash, so that their counts can be converted for ever.
create table board_boot (
    board             varchar(64)      not null,
    boot              bigint           not null,
    identity_hash     bytea            not null check (octet_length(identity_hash) = 32),
    value_kinds       smallint         not null,
    identity          varchar(100000)  not null,
    seen_event_millis bigint           not null,
    primary key (board, boot, identity_hash)
);

create index board_boot_identity on board_boot (identity_hash);

-- Ten minutes of one channel. Boot and first scan alone cannot be the key: some boards cannot count their starts, and one
-- whose memory was wiped counts them again. Event time never repeats.
create table segment (
    board              varchar(64)        not null,
    channel            smallint           not null,
    boot               bigint             not null,
    first_scan         bigint             not null,
    last_scan          bigint             not null,
    first_event_millis bigint             not null,
    last_event_millis  bigint             not null,
    samples            integer            not null,
    hash               bytea              not null check (octet_length(hash) = 32),
    body               bytea              not null check (octet_length(body) <= 1000000),
    primary key (board, channel, first_event_millis)
);

create table passage (
    id                  uuid             not null primary key,
    tag                 varchar(200)     not null,
    board               varchar(64)      not null,
    channel             smallint         not null,
    opened_event_millis bigint           not null,
    opened_wall_millis  bigint           not null,
    opened_wall_quality varchar(40)      not null,
    procedure_text      varchar(1000000) not null,
    cell_text           varchar(1000000) not null,
    simulated           boolean          not null,
    speed               integer          not null,
    closed_event_millis bigint,
    closed_reason       varchar(2000)
);

create table journal (
    passage_id      uuid             not null references passage (id),
    sequence        bigint           not null,
    event_millis    bigint           not null,
    position_millis bigint           not null,
    kind            varchar(80)      not null,
    body            varchar(1000000) not null,
    wall_millis     bigint           not null,
    wall_quality    varchar(40)      not null,
    primary key (passage_id, sequence)
);

create table transition (
    passage_id   uuid          not null references passage (id),
    sequence     bigint        not null,
    event_millis bigint        not null,
    from_phase   varchar(40)   not null,
    to_phase     varchar(40)   not null,
    reason       varchar(4000) not null,
    primary key (passage_id, sequence)
);

create table finding (
    passage_id           uuid             not null references passage (id),
    sequence             bigint           not null,
    kind                 varchar(80)      not null,
    raised_event_millis  bigint           not null,
    cleared_event_millis bigint,
    evidence             varchar(1000000) not null,
    primary key (passage_id, sequence)
);
