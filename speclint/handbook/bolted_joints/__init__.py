"""Studs and bolts that clamp a joint: how they are tightened, how stiff they are, what they carry.

==============  ===============================================================================
tightening      preload from torque, friction in the thread and under the nut
scatter         what a method of tightening leaves between least and greatest preload; embedding
stud_stress     tension with the torsion left by tightening, preload that a strength permits
stiffness       stud, clamped parts, gasket, and the load factor they make
loads           share of the working load, separation, heat
fatigue         endurance of a thread under a load that comes every stroke
stripping       shear of the threads in the nut or the block
layout          pitch and number of studs on a circle
==============  ===============================================================================

Where a joint holds steam, the local code and a competent person decide; these are the sums they check.
"""
