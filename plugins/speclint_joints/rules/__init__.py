"""The rules of joints, one module a subject."""

from __future__ import annotations

from speclint_joints.rules import covers, fatigue, holes, layout, threads, tightening, tightness

RULES = (
    covers.flange,
    covers.on_test,
    covers.thickness,
    fatigue.stud_fatigue,
    holes.edge,
    holes.engagement,
    holes.hole_depth,
    layout.stud_count,
    layout.stud_pitch,
    threads.same_thread,
    tightening.bolting_material,
    tightening.preload,
    tightening.service_stress,
    tightness.face_pressure,
    tightness.gasket_load,
    tightness.gasket_rating,
    tightness.separation,
    tightness.thermal,
)
