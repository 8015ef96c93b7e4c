-- The store of a fleet, for PostgreSQL 13 or newer. Running it again changes nothing.
--
-- Events are appended and never changed. Everybody reads the events of their own company only, technicians and desks
-- append under their own login only. What a member may do is held here, whatever program they connect with.
--
-- position is a place in the order of commits, without gaps: a reader who goes on after the last place it has read
-- misses nothing. Who inserts therefore waits until the one before has committed. That is a lock on the row of the
-- company, since any login could take an advisory lock and keep everybody waiting.

select pg_advisory_xact_lock(hashtext('diagnose'));

do $$
declare
  missing text;
begin
  foreach missing in array array['diagnose_owner', 'diagnose_technician', 'diagnose_desk', 'diagnose_reader'] loop
    if not exists (select from pg_catalog.pg_roles where rolname = missing) then
      execute format('create role %I nologin', missing);
    end if;
  end loop;
  if not (select rolsuper from pg_catalog.pg_roles where rolname = current_user) then
    execute format('grant diagnose_owner to %I', current_user);
  end if;
end $$;

create schema if not exists diagnose authorization diagnose_owner;
set local role diagnose_owner;
revoke all on schema diagnose from public;
grant usage on schema diagnose to diagnose_technician, diagnose_desk, diagnose_reader;

create table if not exists diagnose.store (
  only_one boolean primary key default true check (only_one),
  id uuid not null default gen_random_uuid(),
  shape integer not null default 1
);
insert into diagnose.store default values on conflict do nothing;

create table if not exists diagnose.company (
  id integer generated always as identity primary key,
  name text not null unique check (name ~ '^[^[:cntrl:]]{1,80}$'),
  -- Anybody may listen to any channel whose name they know.
  channel text not null unique default 'diagnose_' || replace(gen_random_uuid()::text, '-', '')
);

create table if not exists diagnose.member (
  login text primary key,
  company integer not null references diagnose.company,
  kind text not null check (kind in ('technician', 'desk', 'reader'))
);

-- The name under which a journal writes belongs to the login that used it first.
create table if not exists diagnose.writer (
  company integer not null references diagnose.company,
  name text not null check (name ~ '^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$' and name <> 'local'),
  login text not null,
  since timestamptz not null default clock_timestamp(),
  primary key (company, name)
);

create table if not exists diagnose.event (
  company integer not null references diagnose.company,
  "position" bigint not null,
  job text not null check (job ~ '^[A-Za-z0-9][A-Za-z0-9._-]{0,79}$'),
  writer text not null,
  seq integer not null check (seq >= 1),
  seen text not null check (length(seen) <= 60),
  at text not null check (
    at ~ '^\d{4}-\d\d-\d\dT([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,6})?(Z|[+-]\d\d:[0-5]\d)$'
  ),
  -- As text, word for word: jsonb would refuse some of it and change the rest.
  body text not null check (octet_length(body) <= 1048576 and json_typeof(body::json) = 'object'),
  login text not null,
  received timestamptz not null,
  primary key (company, "position"),
  constraint event_key unique (company, job, writer, seq),
  foreign key (company, writer) references diagnose.writer
);

create or replace function diagnose.my_company() returns integer
language sql stable security definer set search_path = pg_catalog, pg_temp as $$
  select company from diagnose.member where login = session_user;
$$;

-- Gives an event its company, place, login and time, whoever inserts it and however.
create or replace function diagnose.event_comes() returns trigger
language plpgsql security definer set search_path = pg_catalog, pg_temp as $$
declare
  mine diagnose.member%rowtype;
  holder text;
  last integer;
begin
  select * into mine from diagnose.member where login = session_user;
  if mine.login is null or mine.kind = 'reader' then
    raise exception 'the login % may not write into this store', session_user using errcode = 'DG004';
  end if;
  perform from diagnose.company where id = mine.company for no key update;
  select login into holder from diagnose.writer where company = mine.company and name = new.writer;
  if holder is null then
    insert into diagnose.writer (company, name, login) values (mine.company, new.writer, session_user);
  elsif holder <> session_user then
    raise exception 'the writer % belongs to another login', new.writer using errcode = 'DG002';
  end if;
  select coalesce(max(seq), 0) into last from diagnose.event
  where company = mine.company and job = new.job and writer = new.writer;
  if new.seq > last + 1 then
    raise exception 'event % of % by % is missing', last + 1, new.job, new.writer using errcode = 'DG003';
  end if;
  perform new.at::timestamptz;
  new.company := mine.company;
  new.login := session_user;
  new.received := clock_timestamp();
  select coalesce(max("position"), 0) + 1 into new."position" from diagnose.event where company = mine.company;
  return new;
end $$;

-- Who listens is told that something came, and up to which place; never what.
create or replace function diagnose.event_told() returns trigger
language plpgsql security definer set search_path = pg_catalog, pg_temp as $$
begin
  perform pg_notify(c.channel, max(f."position")::text)
  from fresh f join diagnose.company c on c.id = f.company group by c.channel;
  return null;
end $$;

create or replace function diagnose.event_stays() returns trigger
language plpgsql set search_path = pg_catalog, pg_temp as $$
begin
  raise exception 'events are appended and never changed' using errcode = 'DG005';
end $$;

drop trigger if exists event_comes on diagnose.event;
create trigger event_comes before insert on diagnose.event
for each row execute function diagnose.event_comes();
drop trigger if exists event_told on diagnose.event;
create trigger event_told after insert on diagnose.event referencing new table as fresh
for each statement execute function diagnose.event_told();
drop trigger if exists event_stays on diagnose.event;
create trigger event_stays before update or delete or truncate on diagnose.event
for each statement execute function diagnose.event_stays();

-- Letters [job, writer, seq, seen, at, body] in their order; what is here already changes nothing.
create or replace function diagnose.push_events(letters jsonb)
returns table (job text, writer text, seq integer, "position" bigint)
language plpgsql set search_path = pg_catalog, pg_temp as $$
#variable_conflict use_column
declare
  other record;
begin
  insert into diagnose.event (job, writer, seq, seen, at, body)
  select l ->> 0, l ->> 1, (l ->> 2)::integer, l ->> 3, l ->> 4, l ->> 5
  from jsonb_array_elements(letters) with ordinality as t (l, nth) order by nth
  on conflict on constraint event_key do nothing;

  select e.job, e.writer, e.seq into other from jsonb_array_elements(letters) as l
  join diagnose.event e on e.company = (select diagnose.my_company())
    and e.job = l ->> 0 and e.writer = l ->> 1 and e.seq = (l ->> 2)::integer
  where (e.seen, e.at, e.body) is distinct from (l ->> 3, l ->> 4, l ->> 5)
  order by e."position" limit 1;
  if found then
    raise exception 'event % of % by % is in the store with another content', other.seq, other.job, other.writer
    using errcode = 'DG001';
  end if;

  return query select e.job, e.writer, e.seq, e."position" from jsonb_array_elements(letters) as l
  join diagnose.event e on e.company = (select diagnose.my_company())
    and e.job = l ->> 0 and e.writer = l ->> 1 and e.seq = (l ->> 2)::integer;
end $$;

-- What stands after a place, at most so many events or somewhat over a megabyte; newest is the last place of all.
create or replace function diagnose.read_events(after bigint, most integer)
returns table (
  "position" bigint, job text, writer text, seq integer, seen text, at text, body text, newest bigint
)
language sql stable set search_path = pg_catalog, pg_temp as $$
  select "position", job, writer, seq, seen, at, body,
    (select max("position") from diagnose.event where company = (select diagnose.my_company()))
  from (
    select e.*, sum(octet_length(body)) over (order by "position") - octet_length(body) as before
    from diagnose.event e
    where company = (select diagnose.my_company()) and "position" > read_events.after
    order by "position" limit greatest(1, least(most, 1000))
  ) as page
  where before < 1000000
  order by "position";
$$;

-- What the store says of itself to the login that asks, and which event it has at a place; no row for a stranger.
create or replace function diagnose.hello(place bigint)
returns table (
  shape integer, store text, company text, kind text, channel text, newest bigint, clock timestamptz,
  job text, writer text, seq integer
)
language sql volatile security definer set search_path = pg_catalog, pg_temp as $$
  select s.shape, s.id::text || '/' || c.id, c.name, m.kind, c.channel,
    coalesce((select max("position") from diagnose.event where company = c.id), 0), clock_timestamp(),
    e.job, e.writer, e.seq
  from diagnose.store s cross join diagnose.member m join diagnose.company c on c.id = m.company
  left join diagnose.event e on e.company = c.id and e."position" = hello.place
  where m.login = session_user;
$$;

-- For who keeps the store: a login becomes a member, or another kind of member, of a company.
create or replace function diagnose.admit(who text, what text, firm text) returns void
language plpgsql set search_path = pg_catalog, pg_temp as $$
declare
  theirs integer;
  before integer;
begin
  insert into diagnose.company (name) values (firm) on conflict (name) do nothing;
  select id into theirs from diagnose.company where name = firm;
  select company into before from diagnose.member where login = who;
  if before <> theirs then
    raise exception 'the login % belongs to another company', who using errcode = 'DG006';
  end if;
  insert into diagnose.member values (who, theirs, what) on conflict (login) do update set kind = excluded.kind;
end $$;

revoke all on all tables in schema diagnose from public, diagnose_technician, diagnose_desk, diagnose_reader;
revoke all on all functions in schema diagnose from public, diagnose_technician, diagnose_desk, diagnose_reader;
grant select on diagnose.event to diagnose_technician, diagnose_desk, diagnose_reader;
grant insert (job, writer, seq, seen, at, body) on diagnose.event to diagnose_technician, diagnose_desk;
grant execute on function diagnose.my_company(), diagnose.hello(bigint), diagnose.read_events(bigint, integer)
to diagnose_technician, diagnose_desk, diagnose_reader;
grant execute on function diagnose.push_events(jsonb) to diagnose_technician, diagnose_desk;

alter table diagnose.event enable row level security;
drop policy if exists event_read on diagnose.event;
create policy event_read on diagnose.event for select
to diagnose_technician, diagnose_desk, diagnose_reader
using (company = (select diagnose.my_company()));
drop policy if exists event_write on diagnose.event;
create policy event_write on diagnose.event for insert
to diagnose_technician, diagnose_desk
with check (company = (select diagnose.my_company()) and login = session_user);

reset role;
