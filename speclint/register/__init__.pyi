from .comparison import (
    Before as Before,
    before_at as before_at,
)
from .entering import (
    Acceptance as Acceptance,
    concede as concede,
)
from .gate import (
    Decision as Decision,
    Reason as Reason,
    judge as judge,
)
from .opened import (
    stand_of as stand_of,
    surroundings as surroundings,
)
from .reading import (
    Reader as Reader,
    enter_reading as enter_reading,
)
from .reading_standing import (
    ReadingStanding as ReadingStanding,
    reading_standings as reading_standings,
)
from .signing import (
    sign_entry as sign_entry,
)
from .staged import (
    StagedAssessment as StagedAssessment,
    assess_staged as assess_staged,
)
from .standing import (
    Standing as Standing,
    Surroundings as Surroundings,
    standings as standings,
)
from .two_states import (
    Checking as Checking,
    Comparison as Comparison,
    StateOfDesign as StateOfDesign,
    compare as compare,
    place_of as place_of,
    state_at as state_at,
    state_called as state_called,
    state_of as state_of,
)
