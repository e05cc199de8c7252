"""Where the mains side is: it belongs to the request, not to a part."""

from service.case.place import Place

REQUEST = Place("wall")
