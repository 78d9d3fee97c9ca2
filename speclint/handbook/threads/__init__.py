"""Screw threads of the trade: ISO metric, Unified, Whitworth and pipe threads.

================  =============================================================================
designations      what is written on a drawing ("M24", "7/8 BSW", "3/4-10 UNC") and what it means
geometry          diameters and tensile stress area of a thread
limits            limits of size of the usual class of bolt and of nut
engagement        areas that shear when a thread strips, on the basic profile and at worst limits
================  =============================================================================
"""

from speclint.handbook.threads.engagement import external_stripping_area, internal_stripping_area
from speclint.handbook.threads.geometry import Thread, root_area, stress_area, tensile_stress_area, thread
from speclint.handbook.threads.limits import ThreadLimits, limits

__all__ = [
    "Thread",
    "ThreadLimits",
    "external_stripping_area",
    "internal_stripping_area",
    "limits",
    "root_area",
    "stress_area",
    "tensile_stress_area",
    "thread",
]
