"""The rules of joints, one module a subject."""

from __future__ import annotations

from speclint_joints.rules import layout, threads, tightening

RULES = (
    layout.stud_count,
    layout.stud_pitch,
    threads.same_thread,
    tightening.bolting_material,
    tightening.preload,
    tightening.service_stress,
)
