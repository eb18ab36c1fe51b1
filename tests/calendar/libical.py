"""iCalendar files as libical 3, a C library of Debian (libical3), reads them."""
import calendar
import ctypes
import datetime

LIB = ctypes.CDLL("libical.so.3")
P, S, I = ctypes.c_void_p, ctypes.c_char_p, ctypes.c_int
SIGNATURES = {
    "icalparser_parse_string": (P, [S]), "icalcomponent_free": (None, [P]),
    "icalcomponent_count_errors": (I, [P]), "icalrestriction_check": (I, [P]),
    "icalcomponent_string_to_kind": (I, [S]), "icalproperty_string_to_kind": (I, [S]),
    "icalcomponent_get_first_component": (P, [P, I]), "icalcomponent_get_next_component": (P, [P, I]),
    "icalcomponent_get_first_property": (P, [P, I]), "icalcomponent_get_next_property": (P, [P, I]),
    "icalcomponent_count_properties": (I, [P, I]),
    "icalproperty_get_value_as_string": (S, [P]), "icalproperty_get_parameter_as_string": (S, [P, S]),
    "icalproperty_get_value": (P, [P]), "icalvalue_get_text": (S, [P]),
    "icalrecur_expand_recurrence": (I, [S, ctypes.c_longlong, I, ctypes.POINTER(ctypes.c_longlong)]),
    "icalerror_set_errors_are_fatal": (None, [I]),
}
for name, (result, arguments) in SIGNATURES.items():
    getattr(LIB, name).restype, getattr(LIB, name).argtypes = result, arguments
LIB.icalerror_set_errors_are_fatal(0)
MOST = 5000  # occurrences of one event


def parts(component, kind):
    kind = LIB.icalcomponent_string_to_kind(kind)
    part = LIB.icalcomponent_get_first_component(component, kind)
    while part:
        yield part
        part = LIB.icalcomponent_get_next_component(component, kind)


def prop(component, name):
    return LIB.icalcomponent_get_first_property(component, LIB.icalproperty_string_to_kind(name))


def texts(component, name):
    """The TEXT values of all properties of one name; a list of them is several properties to libical."""
    kind = LIB.icalproperty_string_to_kind(name)
    found = LIB.icalcomponent_get_first_property(component, kind)
    while found:
        yield LIB.icalvalue_get_text(LIB.icalproperty_get_value(found)).decode()
        found = LIB.icalcomponent_get_next_property(component, kind)


def value(component, name):
    found = prop(component, name)
    return LIB.icalproperty_get_value_as_string(found).decode() if found else None


def text(component, name):
    """A TEXT value without its escapes."""
    found = prop(component, name)
    return LIB.icalvalue_get_text(LIB.icalproperty_get_value(found)).decode() if found else None


def moment(words):
    return datetime.datetime.strptime(words, "%Y%m%dT%H%M%S" if "T" in words else "%Y%m%d")


def occurrences(start, rule):
    if rule is None:
        return [start]
    room = (ctypes.c_longlong * MOST)()
    LIB.icalrecur_expand_recurrence(rule.encode(), calendar.timegm(start.timetuple()), MOST, room)
    return [datetime.datetime(1970, 1, 1) + datetime.timedelta(seconds=s) for s in room if s]


def event(component):
    found = prop(component, b"DTSTART")
    start = value(component, b"DTSTART")
    parameters = [LIB.icalproperty_get_parameter_as_string(found, p) for p in (b"VALUE", b"TZID")]
    alarms = [{"action": value(a, b"ACTION"), "trigger": value(a, b"TRIGGER")} for a in parts(component, b"VALARM")]
    return {"uid": text(component, b"UID"), "start": moment(start), "all_day": parameters[0] == b"DATE",
            "floating": parameters[1] is None and not start.endswith("Z"), "stamp": value(component, b"DTSTAMP"),
            "sequence": int(value(component, b"SEQUENCE")), "summary": text(component, b"SUMMARY"),
            "description": text(component, b"DESCRIPTION"), "what": list(texts(component, b"CATEGORIES")),
            "status": value(component, b"STATUS"), "alarms": alarms,
            "occurrences": occurrences(moment(start), value(component, b"RRULE"))}


def read(data):
    """({"name", "events"} or None, findings)."""
    whole = LIB.icalparser_parse_string(data)
    if not whole:
        return None, ["libical: no calendar"]
    errors = LIB.icalcomponent_count_errors(whole)
    found = [f"libical: {errors} errors"] if errors else []
    found += [] if LIB.icalrestriction_check(whole) else ["libical: restrictions of RFC 5545 not kept"]
    try:
        answer = {"name": text(whole, b"NAME"), "events": [event(c) for c in parts(whole, b"VEVENT")]}
    except (AttributeError, ValueError, TypeError) as fault:
        answer, found = None, found + [f"libical: a property is missing or malformed: {fault}"]
    LIB.icalcomponent_free(whole)
    return answer, found
