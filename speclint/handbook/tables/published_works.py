"""Works that more than one module of the handbook cites.

``memory`` is set where a figure or an equation was recalled from the work and not read in it.
"""

from __future__ import annotations

from speclint.equations import Source

#: Where the worked examples of these textbooks were read.
_COMPANION = "as printed in the FOSSEE Python Textbook Companion"

SHIGLEY = Source(
    "R. G. Budynas and J. K. Nisbett, Shigley's Mechanical Engineering Design", "10th ed., 2015", memory=True
)
ROARK = Source(
    "W. C. Young and R. G. Budynas, Roark's Formulas for Stress and Strain", "7th ed., 2002", memory=True
)
JOHNSON_CONTACT = Source("K. L. Johnson, Contact Mechanics", "1985", memory=True)
PETERSON = Source("W. D. Pilkey, Peterson's Stress Concentration Factors", "2nd ed., 1997", memory=True)
KHURMI = Source("R. S. Khurmi and J. K. Gupta, A Textbook of Machine Design", "2005")
WENTZELL = Source("T. H. Wentzell, Machine Design", f"Delmar, {_COMPANION}")
JINDAL = Source("U. C. Jindal, Machine Design", f"Pearson, {_COMPANION}")
SINGH = Source("Sadhu Singh, Machine Design-I", _COMPANION)
JOEL = Source("Rayner Joel, Basic Engineering Thermodynamics", _COMPANION)
SARKAR = Source("B. K. Sarkar, Theory of Machines", _COMPANION)
BHAVIKATTI = Source("S. S. Bhavikatti, Strength of Materials", _COMPANION)
CENGEL_HEAT = Source("Y. A. Cengel, Heat and Mass Transfer: A Practical Approach", _COMPANION)
LINEHAM = Source("W. J. Lineham, A Text-Book of Mechanical Engineering", "title page not seen")
KAZIMI = Source("S. M. A. Kazimi, Solid Mechanics", _COMPANION)
BORESI = Source("A. P. Boresi and R. J. Schmidt, Advanced Mechanics of Materials", _COMPANION)
VDI_2230 = Source(
    "VDI 2230 Part 1, Systematic calculation of highly stressed bolted joints", "2003", memory=True
)
ASME_APPENDIX_2 = Source("ASME Boiler and Pressure Vessel Code, Section VIII Division 1", "2019", memory=True)
POCKET_BOOK = Source("A period pocket-book of engineering formulae", "title page not seen")
