"""Give me a burner: from what must be heated and what lies in the shop to designs, ranked, and what mends a design."""

from .answer import Answer, find
from .good import Mended, make_good
from .have import Have, read_have
from .shops import sample, tornado

__all__ = ["Answer", "Have", "Mended", "find", "make_good", "read_have", "sample", "tornado"]
