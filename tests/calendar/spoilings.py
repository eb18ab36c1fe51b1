"""Sound calendars spoilt in one place each, of which calendars.py must notice every one."""
import re


def replaced(old, new, count=1):
    return lambda data: re.sub(old, new, data, count=count, flags=re.S)


BIRD = "\U0001f425".encode()
EVENT = rb"BEGIN:VEVENT\r\n(?:(?!END:VEVENT).)*%s.*?END:VEVENT\r\n"
ALARM = rb"BEGIN:VALARM\r\n.*?END:VALARM\r\n"


def alarm_where_none_is(data):
    """An alarm in the first event that has none and is no note."""
    for event in re.findall(rb"BEGIN:VEVENT.*?END:VEVENT\r\n", data, flags=re.S):
        if b"VALARM" not in event and b"CATEGORIES:notes" not in event:
            alarm = re.search(ALARM, data, flags=re.S)[0]
            return data.replace(event, event.replace(b"END:VEVENT", alarm + b"END:VEVENT"), 1)
    return data


def second_event_of_a_chore(data):
    event = re.search(EVENT % rb"CATEGORIES:[^\r]*top up", data, flags=re.S)[0]
    return data.replace(event, event + event.replace(b"UID:", b"UID:a", 1), 1)


SPOILINGS = {
    "a line feed alone": replaced(rb"\r\n", b"\n"),
    "an unfolded line": replaced(rb"\r\n ", b"", 0),
    "a broken character": lambda data: data.replace(BIRD, BIRD[:2] + b"\r\n " + BIRD[2:], 1),
    "an end left out": replaced(rb"END:VEVENT\r\n", b""),
    "no UID": replaced(rb"UID:[^\r]*\r\n", b""),
    "one UID twice": lambda data: data.replace(*re.findall(rb"UID:\w+", data)[1::-1], 1),
    "another UID": replaced(rb"(CATEGORIES:notes.*?UID:)\w\w\w", rb"\1abc"),
    "no DTSTAMP": replaced(rb"DTSTAMP:[^\r]*\r\n", b""),
    "an older SEQUENCE": replaced(rb"SEQUENCE:\d", b"SEQUENCE:"),
    "cancelled": replaced(rb"TRANSP:", b"STATUS:CANCELLED\r\nTRANSP:"),
    "a moment that is none": replaced(rb"DTSTART:\d{8}T", b"DTSTART:20271399T"),
    "a minute later": replaced(rb"(DTSTART:\d{8}T\d\d)\d\d(\d\d\r\nSUMMARY:Look)", rb"\g<1>01\2"),
    "at night": replaced(rb"(DTSTART:\d{8}T)\d\d(\d{4}\r\nSUMMARY:Look)", rb"\g<1>23\2"),
    "hours in UTC": replaced(rb"(DTSTART:\d{8}T\d{6})", rb"\1Z"),
    "a recurrence": replaced(rb"(\r\nSUMMARY:Look)", rb"\r\nRRULE:FREQ=DAILY;COUNT=2\1"),
    "an event left out": replaced(EVENT % rb"CATEGORIES:[^\r]*fresh water", b""),
    "two events of one chore": second_event_of_a_chore,
    "a deed left out": replaced(rb"(DESCRIPTION:[^\r]*look in\\, count the dead\.)\\n(?:(?!\\n)(?!\r\n\w).)*", rb"\1"),
    "a deed twice": replaced(rb"(look in\\,[ \r\n]*c[ \r\n]*ount[ \r\n]*the[ \r\n]*dead\.)", rb"\1\\nlook in\\, count"),
    "another amount": replaced(rb"(fresh water in 4 x bell: )\d", rb"\g<1>7"),
    "another weight": replaced(rb"(top up 3 x tube: )\d", rb"\g<1>9"),
    "another level": replaced(rb"to the brim", b"to 50 %"),
    "a warmth too high": replaced(rb"air 90 F", b"air 91 F"),
    "other houses or hatches": replaced(rb"DESCRIPTION:A<script>", b"DESCRIPTION:B<script>"),
    "a bare comma": replaced(rb"(DESCRIPTION:A<script>)\\,", rb"\1,"),
    "no alarm": replaced(ALARM, b""),
    "an alarm for the routine": alarm_where_none_is,
    "an alarm before it": replaced(rb"TRIGGER:PT0M", b"TRIGGER:-PT3H"),
    "an alarm that sounds": replaced(rb"ACTION:DISPLAY", b"ACTION:AUDIO"),
    "another name": replaced(rb"NAME:Cr", b"NAME:Kr"),
    "another category": replaced(rb"CATEGORIES:[^\r]*top up", b"CATEGORIES:clean"),
    "a summary without the hatch": replaced(rb"(SUMMARY:[^\r]*: )A<", rb"\1B<"),
}


def self_test(ask, findings, packages, folder):
    """Prints what is not noticed of the spoilings, and gives the exit status."""
    question, bad = ask("names.toml"), []
    sound, _ = findings(question, question.ics, packages, folder)
    bad += [f"found in the sound file: {one}" for one in sound[:3]]
    for name, spoil in SPOILINGS.items():
        spoilt = spoil(question.ics)
        if spoilt == question.ics:
            bad.append(f"nothing to spoil: {name}")
        elif not set(findings(question, spoilt, packages, folder)[0]) - set(sound):
            bad.append(f"not noticed: {name}")
    print("\n".join(bad + [f"{len(SPOILINGS)} spoilings, {len(bad)} not noticed"]))
    return 1 if bad else 0
