-- What a person asked for about an alarm and was done, by the key of the request; no key is in `receipt` too.
create table alarm_receipt (
    request_key  varchar(200)  not null primary key,
    request_hash varchar(64)   not null,
    alarm_id     uuid          not null references alarm (id),
    sequence     bigint        not null,
    kind         varchar(40)   not null,
    step         varchar(40)   not null,
    state        varchar(40)   not null,
    cover        varchar(40)   not null,
    who          varchar(200)  not null,
    wall_millis  bigint        not null,
    wall_quality varchar(40)   not null
);
