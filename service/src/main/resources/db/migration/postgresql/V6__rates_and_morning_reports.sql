-- How often alarms were raised is asked for by time.
create index alarm_step_raised on alarm_step (step, wall_millis);

-- A message may be about the rack and no alarm.
alter table outbox alter column alarm_id drop not null;

-- The morning reports that were sent, so that a restart sends none twice.
create table morning_report (
    report_day   varchar(10)      not null primary key,
    body         varchar(1000000) not null,
    wall_millis  bigint           not null,
    wall_quality varchar(40)      not null
);
