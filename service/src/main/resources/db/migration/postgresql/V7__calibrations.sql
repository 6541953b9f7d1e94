-- Calibrations of channels against a meter. None is ever changed but by being withdrawn, and none is forgotten.
create table calibration (
    number                bigint        generated always as identity primary key,
    id                    uuid          not null unique,
    serial_number         varchar(32)   not null,
    channel               smallint      not null,
    made_wall_millis      bigint        not null,
    made_wall_quality     varchar(40)   not null,
    body                  varchar(4000) not null,
    withdrawn_wall_millis bigint,
    withdrawn_by          varchar(200),
    withdrawn_reason      varchar(1000)
);

create index calibration_of_channel on calibration (serial_number, channel);
