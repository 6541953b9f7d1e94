-- The card of a cell before it comes to the rack. What is written is never changed: each later word is another revision.
create table intake (
    number       bigint           not null generated always as identity unique,
    tag          varchar(64)      not null,
    revision     int              not null,
    request_key  varchar(200)     not null unique,
    request_hash varchar(64)      not null,
    written_by   varchar(100)     not null,
    reason       varchar(1000)    not null,
    body         varchar(1000000) not null,
    wall_millis  bigint           not null,
    wall_quality varchar(40)      not null,
    primary key (tag, revision)
);

-- Photos of cells, without what the camera wrote beside them.
create table intake_photo (
    tag        varchar(64) not null,
    sha256     varchar(64) not null,
    media_type varchar(40) not null,
    content    bytea       not null,
    primary key (tag, sha256)
);
