"""The rules of joints, one module a subject."""

from __future__ import annotations

from speclint_joints.rules import layout, threads

RULES = (
    layout.stud_count,
    layout.stud_pitch,
    threads.same_thread,
)
