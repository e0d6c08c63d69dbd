# /usr/bin/python3 nmea_check.py < sentences: what pynmea2 (Debian: python3-nmea2) reads
# in sentences of NMEA 0183, one line of JSON for each line: the verdict on the checksum
# and the fields in their order, numbers as numbers, an empty one as null.
import decimal
import json
import sys

import pynmea2


class DBK(pynmea2.TalkerSentence):
    """Depth below keel, which pynmea2 leaves out: the fields of DBT."""

    fields = pynmea2.types.talker.DBT.fields


def verdict(line):
    try:
        return "right", pynmea2.parse(line, check=True)
    except pynmea2.ChecksumError:
        pass
    except pynmea2.ParseError:
        return "not read", None
    try:
        return "none", pynmea2.parse(line)
    except pynmea2.ChecksumError:
        return "wrong", None


def number(text):
    if text == "":
        return None
    try:
        value = decimal.Decimal(text)
    except decimal.InvalidOperation:
        return text
    return float(value) if value.is_finite() else text


def fields(said):
    if said.sentence_type == "XDR":
        out = []
        for i in range(said.num_transducers):
            t = said.get_transducer(i)
            out += [t.type, number(t.value), t.units, t.id]
        return out
    out = []
    for field in said.fields[: len(said.data)]:
        value = getattr(said, field[1])
        out.append(number(str(value)) if isinstance(value, decimal.Decimal) else value)
    return out


for line in sys.stdin:
    line = line.rstrip("\n")
    judged, said = verdict(line)
    if judged == "wrong":  # read it without its checksum
        said = pynmea2.parse(line[: line.index("*")])
    print(json.dumps({"checksum": judged, "fields": fields(said) if said else []}))
