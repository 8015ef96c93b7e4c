"""Questions to a journal that SQLite answers by itself, without reading every job."""

from __future__ import annotations

__all__ = ["OF_MACHINE", "OPEN_JOBS"]

# Jobs opened on a machine under a name of its own, or given that name later on. A name is compared whatever its case;
# an event of another kind, or one that is no JSON, is passed over.
OF_MACHINE = """
select job, min(at), max(at), count(*) from event where job in (
    select job from event where case
        when instr(body, '"Opened"') and json_valid(body) then
            json_extract(body, '$.kind') = 'Opened'
            and json_extract(body, '$.machine') <> json_extract(body, '$.type')
            and casefold(json_extract(body, '$.machine')) = :name
        when instr(body, '"MachineDescribed"') and json_valid(body) then
            json_extract(body, '$.kind') = 'MachineDescribed'
            and json_extract(body, '$.what') = 'name'
            and casefold(json_extract(body, '$.text')) = :name
        else 0 end
) group by job order by min(at), job
"""

# Jobs but for those with a closing that nobody took back; where a withdrawal was itself withdrawn the fold decides, and
# what is no JSON closes nothing. The last column changes with anything that may change how the job stands.
OPEN_JOBS = """
select event.job, min(at), max(at), count(*),
    count(*) || ':' || max(event.rowid) || ':' || total(position)
from event left join sent using (job, number) where event.job not in (
    select closing.job from event closing where case
        when instr(closing.body, '"Closed"') and json_valid(closing.body)
        then json_extract(closing.body, '$.kind') = 'Closed' else 0 end
    and not exists (
        select 1 from event back where back.job = closing.job and case
            when instr(back.body, '"Withdrawn"') and json_valid(back.body) then
                json_extract(back.body, '$.kind') = 'Withdrawn'
                and json_extract(back.body, '$.number') = coalesce(closing.seq, closing.number)
                and coalesce(nullif(json_extract(back.body, '$.of'), ''), back.writer) = closing.writer
            else 0 end
    )
) group by event.job order by max(at), event.job
"""
