from .forces import (
    rotating_force as rotating_force,
    share_balanced as share_balanced,
    swaying_couple as swaying_couple,
)
from .planes import (
    across_in_plane as across_in_plane,
    along_in_plane as along_in_plane,
    angle_of_balance as angle_of_balance,
    big_end_share as big_end_share,
    half_of_distance as half_of_distance,
    mass_of_balance as mass_of_balance,
    out_of_balance as out_of_balance,
    small_end_share as small_end_share,
    sum_in_plane as sum_in_plane,
)
