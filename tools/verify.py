#!/usr/bin/env python3
"""Re-checks the evidence of a coverage verdict. Written from docs/evidence.md, docs/method.md and docs/door-file.md alone, without a look
at the program that wrote the evidence; needs Python 3.9, verify_lanes.py beside it where lanes are claimed, and nothing else.

    python3 tools/verify.py DOOR.json EVIDENCE.json [--json]     what is proved for each zone, or every issue with its place
    python3 tools/verify.py --batch LIST                         many pairs, one `DOOR<tab>EVIDENCE` a line; a JSON object a line comes out

Ends with 0 if everything that the evidence claims was found true, 1 if something was not, 3 if a file could not be read, 4 if this program
itself broke. Evidence may be compressed with gzip. Lengths are in mm and angles in degrees, as in the files; the doorway frame is that of
docs/method.md, section 1.

How to read this file: the door, beams, what a beam may see, the rules for a tile (seen, not free), trees, worst cases, output. A tile is a
closed rectangle of placements (x, y). Wherever something changes straight over a tile it is written (A, B, C), meaning A x + B y + C, and
its largest value is at a corner. A *condition* is a list of options, each a list of such expressions; it holds when in one option all of
them stay below zero on the whole tile, with SPARE to spare.

Where the letter of docs/evidence.md would let a false claim pass, this program asks for more; each such place is marked with STRICTER.
"""
import hashlib
import json
import math
import os
import re
import sys
import time
import traceback
import zlib
from collections import namedtuple

SPARE = 1e-6  # mm, or whatever unit both sides have: every inequality of a claim holds with this to spare
ROUNDING = 1e-9  # mm: what rounding may shift a beam against a body, counted as a tolerance
TIE = 1e-9  # mm: what lies nearer than this lies on the face (a sensor that is screwed onto a wall is not inside of it)
LEVEL = 1e-9  # a direction this small along an axis never enters that pair of faces
ALONG_U, ALONG_V, UPWARD = 1, 2, 4  # bits of the faces that a beam may enter
SIDE, END = 1, 4  # the same for a cylinder
TOLERANCES = ("length_mm", "position_mm", "tilt_deg", "roll_deg", "yaw_deg", "floor_mm", "range_percent")

MOST_BYTES = 64 << 20
MOST_VALUES = 12_000_000  # of evidence, so that memory stays bounded
MOST_DOOR_BYTES = 8 << 20
MOST_LIBRARY_BYTES = 2 << 20
MOST_NODES = 2_000_000  # of one tree
MOST_SPLITS = 64  # nested
MOST_CHECKS = 40_000_000  # beams against tiles and against worst cases, in all
MOST_KEPT = 40_000  # prepared beams
MOST_GROUPED = 400_000  # open tiles
MOST_ISSUES = 100
MOST_BEAMS = 16384


class Unreadable(Exception):
    """A file that cannot be read, or a door file that does not hold what it must."""


class Refused(Exception):
    """One claim that is not true, or evidence that is not built as it must be."""

    def __init__(self, place, expected, got):
        super().__init__(f"{place}: expected {expected}, got {got}")
        self.issue = {"place": place, "expected": expected, "got": got}


# ---------------------------------------------------------------------------------------------------------------------------- reading files


def read_bytes(path, most):
    try:
        with open(path, "rb") as file:
            data = file.read(most + 1)
    except OSError as error:
        raise Unreadable(f"{path}: {error.strerror}") from None
    if len(data) > most:
        raise Refused("file", f"at most {most} bytes", "more")
    return data


def unpacked(data):
    """What gzip packed, without ever unpacking more than MOST_BYTES."""
    if data[:2] != b"\x1f\x8b":
        return data
    unpack = zlib.decompressobj(31)
    try:
        plain = unpack.decompress(data, MOST_BYTES + 1)
    except zlib.error as error:
        raise Unreadable(f"evidence: not gzip ({error})") from None
    if len(plain) > MOST_BYTES:
        raise Refused("file", f"at most {MOST_BYTES} bytes", "more when unpacked")
    if not unpack.eof or unpack.unused_data:
        raise Unreadable("evidence: gzip is cut off, or something follows it")
    return plain


def read_json(data, what):
    """JSON as the standard has it: no NaN, no name twice in one object, no numbers as long as a book."""

    def no_name_twice(pairs):
        found = dict(pairs)
        if len(found) < len(pairs):
            raise ValueError("a name stands twice in one object")
        return found

    def no_constant(name):
        raise ValueError(f"{name} is no JSON")

    if re.search(rb"[0-9]{400}", data):
        raise Unreadable(f"{what}: a number of more than 400 digits")
    try:
        return json.loads(data.decode("utf-8-sig"), object_pairs_hook=no_name_twice, parse_constant=no_constant)
    except RecursionError:
        raise Unreadable(f"{what}: nested too deeply") from None
    except ValueError as error:
        raise Unreadable(f"{what}: {error}") from None


def is_number(value):
    return type(value) in (int, float) and math.isfinite(value)


def is_count(value, below=MOST_NODES):
    return type(value) is int and 0 <= value < below


def shown(value):
    """A value in few words; large ones are not written out."""
    if isinstance(value, (list, dict)) and (len(value) > 12 or any(isinstance(each, (list, dict)) for each in value)):
        return f"{'a list' if isinstance(value, list) else 'an object'} of {len(value)}"
    text = json.dumps(value)
    return text if len(text) <= 80 else text[:77] + "..."


class Entry:
    """An object of the door file with its place, so that whatever is missing or wrong is named."""

    def __init__(self, values, place):
        if not isinstance(values, dict):
            raise Unreadable(f"door file, {place}: expected an object, got {shown(values)}")
        self.values = values
        self.place = place

    def has(self, name):
        return name in self.values

    def wrong(self, name, expected):
        got = shown(self.values[name]) if name in self.values else "nothing"
        return Unreadable(f"door file, {self.place}/{name}: expected {expected}, got {got}")

    def number(self, name, default=None):
        value = self.values.get(name, default)
        if not is_number(value):
            raise self.wrong(name, "a number")
        return float(value)

    def positive(self, name):
        if not self.number(name) > 0:
            raise self.wrong(name, "a number above 0")
        return self.number(name)

    def limit(self, name, when_open):
        return when_open if self.values.get(name, "open") == "open" else self.number(name)

    def text(self, name, default=None):
        value = self.values.get(name, default)
        if not isinstance(value, str):
            raise self.wrong(name, "a text")
        return value

    def list(self, name, most, default=None):
        value = self.values.get(name, default)
        if not isinstance(value, list) or len(value) > most:
            raise self.wrong(name, f"a list of at most {most}")
        return value

    def entries(self, name, most, default=None):
        return [Entry(value, f"{self.place}/{name}/{i}") for i, value in enumerate(self.list(name, most, default))]

    def numbers(self, name, count):
        return numbers_in(self.values.get(name), count, self.wrong(name, f"{count} numbers"))

    def points(self, name, count):
        return [numbers_in(point, count, self.wrong(name, f"a list of {count} numbers each")) for point in self.list(name, 4096)]


def numbers_in(value, count, error):
    if not isinstance(value, list) or len(value) != count or not all(is_number(each) for each in value):
        raise error
    return [float(each) for each in value]


# --------------------------------------------------------------------------------------------------------------------------------- the door

Door = namedtuple("Door", "sha256 states sensors bodies zones tolerances extinction_per_mm file")
State = namedtuple("State", "id floor obstacles")
Floor = namedtuple("Floor", "profile slope_x")  # [(y, z), ...] with rising y, level beyond both ends; rise per mm along x
Box = namedtuple("Box", "id x y half_along half_across turn from_z to_z")  # turn: (cosine, sine) of the yaw
Post = namedtuple("Post", "id x y radius from_z to_z")
Sensor = namedtuple("Sensor", "id kind planes fields max_range range_ref reflectance_ref margin spot learned_in")  # kind: ranging, segments
# times: (response, hold) of its output, where both are known; by_leaf: what it sees, or when it acts, depends on where the leaf is
Field = namedtuple("Field", "id planes x_min x_max y_min y_max clearance top cluster function presence_time times by_leaf")
# length: of a segment; turns: [(name of the tolerance, axis)]; arm: from the middle of a row
Beam = namedtuple("Beam", "origin direction length turns arm")
Body = namedtuple("Body", "id reflectance postures")
Posture = namedtuple("Posture", "shape a b c yaw_from yaw_to lies")  # a cylinder of radius a and height c, else a box; lies: after a fall
Zone = namedtuple("Zone", "id purpose function x_min x_max y_min y_max bodies longest_stay")

# What ships with the program: `use` may name it (docs/rules.md and the catalogue of the program; shapes as docs/door-file.md has them).
SHIPPED_BODIES = {
    "presence-reference-body": {
        "reflectance": 0.1,
        "postures": [{"shape": "box", "size_mm": size} for size in ([700, 300, 200], [300, 700, 200], [300, 200, 700])],
    }
}
SHIPPED_FIELD = {"id": "leaf", "output": "OUT 1", "function": "presence", "xMin_mm": "open", "xMax_mm": "open", "top_mm": "open"}
SHIPPED_SENSORS = {
    "demo-header-scanner": {
        "device": "scanner",
        "planes": [
            {"id": f"plane-{i + 1}", "offset_deg": offset, "fovMin_deg": -53, "fovMax_deg": 53, "beamCount": 266}
            for i, offset in enumerate([-3.7, -1.9, 0, 2.3, 5.1])
        ],
        "fields": [{**SHIPPED_FIELD, "clearance_mm": 70, "clusterBeams": 2, "presenceTime_s": "for-ever"}],
        "maxRange_mm": 8700, "rangeRef_mm": 7900, "reflectanceRef": 0.07, "backgroundMargin_mm": 67, "spotRadius_mm": 0, "usualTilt_deg": 5,
    },
    "demo-header-row": {
        "device": "downward-row",
        "planes": [{"id": name, "beamCount": 23, "spacing_mm": 83, "tilt_deg": tilt} for name, tilt in (("near", 4), ("far", 13))],
        "fields": [{**SHIPPED_FIELD, "clearance_mm": 130, "clusterBeams": 1, "presenceTime_s": 43}],
        "maxRange_mm": 3300, "rangeRef_mm": 2900, "reflectanceRef": 0.09, "backgroundMargin_mm": 110, "spotRadius_mm": 17,
    },
    "demo-single-curtain": {
        "device": "scanner",
        "planes": [{"id": "curtain", "offset_deg": 0, "fovMin_deg": -61, "fovMax_deg": 61, "beamCount": 163}],
        "fields": [{**SHIPPED_FIELD, "clearance_mm": 110, "clusterBeams": 3, "presenceTime_s": "for-ever"}],
        "maxRange_mm": 5900, "rangeRef_mm": 5300, "reflectanceRef": 0.13, "backgroundMargin_mm": 95, "spotRadius_mm": 9, "usualTilt_deg": 7,
    },
}  # fmt: skip


def read_door(path):
    try:
        data = read_bytes(path, MOST_DOOR_BYTES)
    except Refused as error:
        raise Unreadable(f"door file: {error}") from None
    file = Entry(read_json(data, "door file"), "file")
    if file.values.get("sillsight") != 1:
        raise file.wrong("sillsight", "1 (rewrite an older file with a newer program first)")
    survey = Entry(file.values.get("survey"), "survey")
    opening = Entry(survey.values.get("opening"), "survey/opening")
    width, height = opening.positive("width_mm"), opening.positive("height_mm")
    states = read_states(survey, width, height)
    sensors_used, bodies_used = catalogue(file, os.path.dirname(os.path.abspath(path)))
    sensors = [read_sensor(each, i, sensors_used, width, states) for i, each in enumerate(file.entries("sensors", 32, []))]
    bodies = [read_body(each, bodies_used) for each in file.entries("bodies", 32, [{"id": name, "use": name} for name in SHIPPED_BODIES])]
    if sum(len(plane) for sensor in sensors for plane in sensor.planes) > MOST_BEAMS:
        raise Unreadable(f"door file, sensors: expected at most {MOST_BEAMS} beams, got more")
    visibility_m = survey.values.get("visibility_m", "clear")
    door = Door(
        sha256=hashlib.sha256(data).hexdigest(),
        states=states,
        sensors=[sensor for sensor in sensors if sensor.kind != "zone-only"],
        bodies=bodies,
        zones=read_zones(file, sensors, [body.id for body in bodies], width),
        tolerances=read_tolerances(file),
        extinction_per_mm=0.0 if visibility_m == "clear" else 3.912 / (survey.positive("visibility_m") * 1000),
        file=file,
    )
    for what in ("states", "sensors", "bodies", "zones"):
        must_be_different([each.id for each in getattr(door, what)], what)
    return door


def must_be_different(ids, what):
    if len(set(ids)) < len(ids):
        raise Unreadable(f"door file, {what}: expected ids that stand once, got {shown(ids)}")


def must_rise(least, largest, place):
    if not least < largest:
        raise Unreadable(f"door file, {place}: expected limits that rise, got {least} to {largest}")


def read_tolerances(file):
    if not file.has("tolerances"):
        return None
    given = Entry(file.values["tolerances"], "tolerances")
    for name in TOLERANCES:
        if not 0 <= given.number(name) <= 200:
            raise given.wrong(name, "a number from 0")
    return given.values


def catalogue(file, folder):
    """Sensors and bodies that `use` can name: what ships with the program and what pinned libraries hold."""
    sensors, bodies = dict(SHIPPED_SENSORS), dict(SHIPPED_BODIES)
    for reference in file.entries("libraries", 16, []):
        name = reference.text("file")
        if not name or re.match(r"[/~]|[A-Za-z][A-Za-z0-9+.-]*:", name) or "\\" in name or "\0" in name or ".." in name.split("/"):
            raise reference.wrong("file", "a relative path inside the folder of the door file")
        data = read_bytes(os.path.join(folder, name), MOST_LIBRARY_BYTES)
        if hashlib.sha256(data).hexdigest() != reference.text("sha256"):
            raise reference.wrong("sha256", f"the hash of {name}")
        library = Entry(read_json(data, name), name)
        for kind, into in (("sensors", sensors), ("bodies", bodies)):
            for known, values in Entry(library.values.get(kind, {}), f"{name}/{kind}").values.items():
                if known in into:
                    raise Unreadable(f"{name}/{kind}/{known}: expected an id that no other library uses")
                into[known] = values
    return sensors, bodies


def with_library(entry, used):
    """What the entry gives, over what its library gives."""
    if not entry.has("use"):
        return entry
    if entry.text("use") not in used:
        raise entry.wrong("use", "the id of something in a library")
    return Entry({**used[entry.text("use")], **entry.values}, entry.place)


# ------------------------------------------------------------------------------------------------------------- states, floors and obstacles


def read_states(survey, width, height):
    level = Floor([(0.0, 0.0)], 0.0)
    usual = read_floor(Entry(survey.values["floor"], "survey/floor")) if survey.has("floor") else level
    listed = survey.entries("states", 16, []) if survey.has("states") else []
    floors = [read_floor(Entry(state.values["floor"], f"{state.place}/floor")) if state.has("floor") else usual for state in listed]
    lowest = min([0.0] + [z - abs(floor.slope_x) * 2 * width for floor in [usual] + floors for _, z in floor.profile])
    everywhere = implied_obstacles(survey, width, height, lowest) + [read_obstacle(each) for each in survey.entries("obstacles", 200, [])]
    must_be_different([each.id for each in everywhere], "survey/obstacles")
    if not survey.has("states"):
        return [State("as-surveyed", usual, everywhere)]
    states = []
    for state, floor in zip(listed, floors):
        gone = state.list("removeObstacles", 200, [])
        obstacles = [each for each in everywhere if each.id not in gone]
        obstacles += [read_obstacle(each) for each in state.entries("addObstacles", 200, [])]
        must_be_different([each.id for each in obstacles], state.place)
        states.append(State(state.text("id"), floor, obstacles))
    if not states:
        raise survey.wrong("states", "at least one state")
    return states


def read_floor(floor):
    profile = [tuple(point) for point in floor.points("profile_mm", 2)]
    if not profile or len(profile) > 50 or any(not before[0] < after[0] for before, after in zip(profile, profile[1:])):
        raise floor.wrong("profile_mm", "1 to 50 points with rising y")
    return Floor(profile, floor.number("slopeX_percent", 0) / 100)


def read_obstacle(given, id=None):
    name = given.text("id") if id is None else id
    x, y, from_z, to_z = (given.number(each) for each in ("x_mm", "y_mm", "from_mm", "to_mm"))
    must_rise(from_z, to_z, given.place)
    if given.values.get("shape", "box") == "post":
        return Post(name, x, y, given.positive("radius_mm"), from_z, to_z)
    along, across = given.numbers("size_mm", 2)
    if not (along > 0 and across > 0):
        raise given.wrong("size_mm", "two numbers above 0")
    return Box(name, x, y, along / 2, across / 2, turn_of(given.number("yaw_deg", 0)), from_z, to_z)


def implied_obstacles(survey, width, height, lowest):
    """What the survey implies without listing it (docs/method.md, section 1, the table of ids)."""
    blocks = []

    def block(name, x, faces, z):
        y = (faces.number("yMin_mm"), faces.number("yMax_mm"))
        must_rise(y[0], y[1], faces.place)
        if x[0] < x[1] and z[0] < z[1]:
            middle, half = [((low + high) / 2, (high - low) / 2) for low, high in (x, y)], None
            (mx, half_x), (my, half_y) = middle
            blocks.append(Box(name, mx, my, half_x, half_y, (1.0, 0.0), z[0], z[1]))

    def part(name):
        given = survey.values.get(name, "none")
        return None if given == "none" else Entry(given, f"survey/{name}")

    walls, lintel, hood = part("walls"), part("lintel"), part("hood")
    if walls:
        block("wall-at-zero", (-walls.number("beyondZero_mm"), 0.0), walls, (lowest, walls.number("top_mm")))
        block("wall-at-width", (width, width + walls.number("beyondWidth_mm")), walls, (lowest, walls.number("top_mm")))
    spanning = lintel if survey.has("lintel") else walls
    if spanning:
        underside = spanning.number("underside_mm", height) if lintel else height
        block("lintel", (0.0, width), spanning, (underside, spanning.number("top_mm")))
    for name, given in (("jamb", part("jambs")), ("guide", part("guides"))):
        if given:
            z = (lowest, given.number("top_mm", height))
            block(f"{name}-at-zero", (-given.positive("width_mm"), 0.0), given, z)
            block(f"{name}-at-width", (width, width + given.positive("width_mm")), given, z)
    if hood:
        beyond = hood.number("beyond_mm", 0)
        block("hood", (-beyond, width + beyond), hood, (hood.number("from_mm"), hood.number("to_mm")))
    leaf = part("leaf")
    if leaf and leaf.values.get("parked", "none") != "none":
        blocks.append(read_obstacle(Entry(leaf.values["parked"], "survey/leaf/parked"), "parked-leaf"))
    return blocks


def turn_of(angle_deg):
    """Cosine and sine; exact for whole quarter turns, so that what touches does not overlap."""
    quarter = math.fmod(angle_deg, 360) / 90
    if quarter == math.floor(quarter):
        return ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[int(quarter) % 4]
    return math.cos(math.radians(angle_deg)), math.sin(math.radians(angle_deg))


# ------------------------------------------------------------------------------------------------------------------- sensors, bodies, zones


def read_sensor(entry, index, used, width, states):
    given = with_library(entry, used)
    name = given.text("id", f"sensor-{index + 1}")
    device = given.text("device")
    if device == "zone-only":
        covers = Entry(given.values.get("covers"), f"{given.place}/covers")
        ends = [Beam((0.0, covers.number(end), 0.0), None, None, [], None) for end in ("yMin_mm", "yMax_mm")]
        return Sensor(name, device, [ends], [], 0, 0, 1, 0, 0, None)
    if device not in ("scanner", "downward-row", "segments"):
        raise given.wrong("device", "a kind of device")
    planes = given.entries("planes", 64)
    names = [plane.text("id") for plane in planes]
    must_be_different(names, f"{given.place}/planes")
    outputs = read_outputs(given)
    fields = [read_field(with_output(each, outputs), names) for each in given.entries("fields", 32, [{"id": "all", "output": "", "function": "presence"}])]
    must_be_different([each.id for each in fields], f"{given.place}/fields")
    spot = given.number("spotRadius_mm", 0)
    if spot < 0:
        raise given.wrong("spotRadius_mm", "a number from 0")
    if device == "segments":
        return Sensor(name, "segments", [segments_of(plane) for plane in planes], fields, 0, 0, 1, 0, spot, None)
    placed = device == "downward-row" and all(plane.has("places_mm") for plane in planes)
    pose = placed_pose(given) if placed else read_pose(given, width)
    beams = [fan_of(plane, pose) if device == "scanner" else row_of(plane, pose) for plane in planes]
    learned_in = given.text("learnedIn", states[0].id)
    if learned_in not in [state.id for state in states]:
        raise given.wrong("learnedIn", "the id of a state")
    margin = given.number("backgroundMargin_mm", 0)
    if margin < 0:
        raise given.wrong("backgroundMargin_mm", "a number from 0")
    ranges = [given.positive(each) for each in ("maxRange_mm", "rangeRef_mm", "reflectanceRef")]
    return Sensor(name, "ranging", beams, fields, *ranges, margin, spot, learned_in)


Pose = namedtuple("Pose", "at yaw tilt roll faces")


def read_pose(given, width):
    """The pose, from its long form or from side, mounting height and offset. A row faces one of both sides, whatever the exact turn."""
    if given.has("pose"):
        pose = Entry(given.values["pose"], f"{given.place}/pose")
        at = tuple(pose.number(each) for each in ("x_mm", "y_mm", "z_mm"))
        yaw = pose.number("yaw_deg", 0)
        return Pose(at, yaw, pose.number("tilt_deg", 0), pose.number("roll_deg", 0), -1 if abs(yaw) == 180 else 1)
    faces = -1 if given.text("side") == "b" else 1
    at = (given.number("x_mm", width / 2), faces * given.number("offset_mm"), given.number("mountingHeight_mm"))
    tilt = given.number("tilt_deg") if given.has("tilt_deg") else given.number("usualTilt_deg", 0)
    return Pose(at, 0.0 if faces == 1 else 180.0, tilt, 0.0, faces)


def placed_pose(given):
    """Rows whose planes say where each beam starts need no place; the side still says where they lean."""
    yaw = given.values["pose"].get("yaw_deg", 0) if isinstance(given.values.get("pose"), dict) else 0
    faces = -1 if given.values.get("side") == "b" or yaw in (180, -180) else 1
    return Pose((0.0, 0.0, 0.0), 0.0, 0.0, 0.0, faces)


def fan_of(plane, pose):
    """Beams of a scan plane: Rz(yaw) Rx(lean) (sin(theta + roll), 0, -cos(theta + roll)), lean = tilt + offset."""
    count = beam_count(plane)
    first, last = plane.number("fovMin_deg"), plane.number("fovMax_deg")
    if last < first or last - first >= 360 or (last == first and count > 1):
        raise plane.wrong("fovMax_deg", "an angle above fovMin_deg, less than a turn beyond it")
    cos_lean, sin_lean = turn_of(pose.tilt + plane.number("offset_deg", 0))
    cos_yaw, sin_yaw = turn_of(pose.yaw)
    turns = [
        ("yaw_deg", (0.0, 0.0, 1.0)),
        ("tilt_deg", (cos_yaw, sin_yaw, 0.0)),
        ("roll_deg", (-sin_yaw * cos_lean, cos_yaw * cos_lean, sin_lean)),
    ]
    beams = []
    for j in range(count):
        theta = first if count == 1 else first + j * (last - first) / (count - 1)
        down, x = turn_of(theta + pose.roll)
        y, z = down * sin_lean, -down * cos_lean
        beams.append(Beam(pose.at, (x * cos_yaw - y * sin_yaw, x * sin_yaw + y * cos_yaw, z), None, turns, None))
    return beams


def row_of(plane, pose):
    """Beams of a row, each from a place of its own along Rx(tilt) (0, 0, -1); they turn together about the middle of the places."""
    tilt = pose.faces * (pose.tilt + plane.number("tilt_deg", 0))
    if not abs(tilt) < 90:
        raise plane.wrong("tilt_deg", "less than 90 degrees together with the pose")
    cos_tilt, sin_tilt = turn_of(tilt)
    if plane.has("places_mm"):
        places = [tuple(place) for place in plane.points("places_mm", 3)]
    else:
        count = beam_count(plane)
        spacing = plane.number("spacing_mm", 0 if count == 1 else None)
        x, y, z = pose.at
        places = [(x + pose.faces * (j - (count - 1) / 2) * spacing, y, z) for j in range(count)]
    middle = [sum(place[k] for place in places) / max(1, len(places)) for k in range(3)]
    turns = [("yaw_deg", (0.0, 0.0, 1.0)), ("tilt_deg", (1.0, 0.0, 0.0)), ("roll_deg", (0.0, cos_tilt, sin_tilt))]
    direction = (0.0, sin_tilt, -cos_tilt)
    return [Beam(place, direction, None, turns, tuple(place[k] - middle[k] for k in range(3))) for place in places]


def segments_of(plane):
    if plane.has("segments_mm"):
        wrong = plane.wrong("segments_mm", "pairs of places")
        pairs = [pair if isinstance(pair, list) and len(pair) == 2 else [None, None] for pair in plane.list("segments_mm", 4096)]
        ends = [(numbers_in(a, 3, wrong), numbers_in(b, 3, wrong)) for a, b in pairs]
    else:
        uprights = plane.points("between_mm", 2)
        heights = numbers_in(plane.values.get("heights_mm"), len(plane.list("heights_mm", 4096)), plane.wrong("heights_mm", "numbers"))
        if len(uprights) != 2:
            raise plane.wrong("between_mm", "two places")
        ends = [(uprights[0] + [z], uprights[1] + [z]) for z in heights]
    beams = []
    for start, end in ends:
        length = math.sqrt(sum((b - a) ** 2 for a, b in zip(start, end)))
        if length == 0:
            raise Unreadable(f"door file, {plane.place}: expected segments with two ends, got one place")
        beams.append(Beam(tuple(start), tuple((b - a) / length for a, b in zip(start, end)), length, [], None))
    return beams


def beam_count(plane):
    count = plane.number("beamCount")
    if count != int(count) or not 1 <= count <= 4096:
        raise plane.wrong("beamCount", "a whole number from 1 up to 4096")
    return int(count)


def read_outputs(given):
    """The listed outputs by name; None where there is no list, or no fields that could name one."""
    if not given.has("outputs") or not given.has("fields"):
        return None
    listed = given.entries("outputs", 32)
    names = [each.text("name") for each in listed]
    must_be_different(names, f"{given.place}/outputs")
    return dict(zip(names, listed))


def with_output(field, outputs):
    """What a field says for itself stands before what its output says; the function is one and the same."""
    if outputs is None:
        return field
    output = outputs.get(field.text("output"))
    if output is None:
        raise field.wrong("output", "an output of this sensor")
    if field.has("function") and field.text("function") != output.text("function"):
        raise field.wrong("function", "the function of its output")
    return Entry({**output.values, **field.values, "function": output.text("function")}, field.place)


def read_field(given, planes):
    used = given.list("planes", 64, planes)
    if any(name not in planes for name in used):
        raise given.wrong("planes", "planes of this sensor")
    cluster = given.number("clusterBeams", 1)
    if cluster != int(cluster) or cluster < 1:
        raise given.wrong("clusterBeams", "a whole number from 1")
    presence_time = given.values.get("presenceTime_s")
    if presence_time is not None:
        presence_time = math.inf if presence_time == "for-ever" else given.positive("presenceTime_s")
    sides = [given.limit(f"{axis}{end}_mm", when) for axis in "xy" for end, when in (("Min", -math.inf), ("Max", math.inf))]
    heights = given.number("clearance_mm", 0), given.limit("top_mm", math.inf)
    planes_used = {planes.index(name) for name in used}
    times = None
    if given.has("response_s") and given.has("hold_s"):
        times = (given.number("response_s"), given.number("hold_s"))
        if min(times) < 0:
            raise given.wrong("response_s", "times from 0")
    hides = given.values.get("leafHides", "nothing") != "nothing"
    by_leaf = hides or given.has("leafBlanking") or len(given.list("blanking", 1000, [])) > 0
    return Field(given.text("id"), planes_used, *sides, *heights, int(cluster), given.text("function"), presence_time, times, by_leaf)


def read_body(entry, used):
    given = with_library(entry, used)
    reflectance = given.positive("reflectance")
    if reflectance > 1:
        raise given.wrong("reflectance", "a number above 0 up to 1")
    postures = [read_posture(each) for each in given.entries("postures", 32)]
    return Body(given.text("id"), reflectance, postures)


def read_posture(given):
    lies = given.values.get("how", "passes") == "fallen"
    if given.text("shape") == "cylinder":
        radius = given.positive("radius_mm")
        return Posture("cylinder", radius, radius, given.positive("height_mm"), 0.0, 0.0, lies)
    if given.text("shape") != "box":
        raise given.wrong("shape", '"box" or "cylinder"')
    size = given.numbers("size_mm", 3)
    if not min(size) > 0:
        raise given.wrong("size_mm", "three numbers above 0")
    if isinstance(given.values.get("yaw_deg"), list):
        yaw_from, yaw_to = given.numbers("yaw_deg", 2)
    else:
        yaw_from = yaw_to = given.number("yaw_deg", 0)
    if not 0 <= yaw_to - yaw_from <= 360:
        raise given.wrong("yaw_deg", "the smaller angle first, and at most one turn")
    return Posture("box", *size, yaw_from, yaw_to, lies)


FUNCTION_OF = {"presence-at-leaf": "presence", "opening": "opening", "call": "call"}


def read_zones(file, sensors, bodies, width):
    if not file.has("zones"):  # presence at the leaf, 1000 mm deep, on each side that has a sensor
        sides = {"b" if at < 0 else "a" for sensor in sensors for plane in sensor.planes for beam in plane for at in ends_along_y(beam)}
        sides = [side for side in ("a", "b") if side in sides or not sides]
        depth = {"a": (0.0, 1000.0), "b": (-1000.0, 0.0)}
        return [Zone(f"leaf-{side}", "presence-at-leaf", "presence", 0.0, width, *depth[side], bodies, None) for side in sides]
    zones = []
    for given in file.entries("zones", 32):
        purpose = given.text("purpose")
        x_min, x_max, y_min, y_max = (given.number(each) for each in ("xMin_mm", "xMax_mm", "yMin_mm", "yMax_mm"))
        must_rise(x_min, x_max, given.place)
        must_rise(y_min, y_max, given.place)
        function = FUNCTION_OF.get(purpose) or given.text("function")
        listed = list(dict.fromkeys(given.list("bodies", 32, bodies)))
        if any(name not in bodies for name in listed):
            raise given.wrong("bodies", "ids of bodies")
        stay = given.positive("longestStay_s") if given.has("longestStay_s") else None
        zones.append(Zone(given.text("id"), purpose, function, x_min, x_max, y_min, y_max, listed, stay))
    return zones


def ends_along_y(beam):
    return (beam.origin[1],) if beam.length is None else (beam.origin[1], beam.origin[1] + beam.length * beam.direction[1])


# ----------------------------------------------------------------------------------------------------------------------- floor along a beam


def floor_affine(floor, y):
    """The floor of the piece under y, extended: height = A x + B y + C."""
    profile = floor.profile
    if y < profile[0][0]:
        return floor.slope_x, 0.0, profile[0][1]
    if y >= profile[-1][0]:
        return floor.slope_x, 0.0, profile[-1][1]
    for (y0, z0), (y1, z1) in zip(profile, profile[1:]):
        if y < y1:
            steep = (z1 - z0) / (y1 - y0)
            return floor.slope_x, steep, z0 - steep * y0
    raise AssertionError("a profile without gaps")


def profile_at(floor, y):
    _, steep, z = floor_affine(floor, y)
    return steep * y + z


def stretches_over_floor(floor, beam, at_least, at_most, reach_y):
    """The stretches of t >= 0 along the beam whose points lie, above the highest floor within `reach_y` along y, at least `at_least` high,
    and above the lowest one at most `at_most`. Between two bends the highest floor is the largest of a few straight pieces."""
    cuts = sorted({y + shift for y, _ in floor.profile for shift in (-reach_y, reach_y)})
    d_y = beam.direction[1]
    times = sorted(t for t in ((y - beam.origin[1]) / d_y for y in cuts) if t > 0 and math.isfinite(t)) if abs(d_y) > 1e-15 else []
    found = []
    for start, end in zip([0.0] + times, times + [math.inf]):
        middle_y = beam.origin[1] + d_y * (start + 1 if end == math.inf else (start + end) / 2)
        pieces = {floor_affine(floor, middle_y + shift)[1:] + (shift,) for shift in (-reach_y, reach_y)}
        pieces |= {(0.0, z, 0.0) for y, z in floor.profile if abs(y - middle_y) <= reach_y}
        low, high = start, end
        for steep, z, shift in pieces:
            # height of the beam above this piece: at + rate t
            at = beam.origin[2] - floor.slope_x * beam.origin[0] - z - steep * (beam.origin[1] + shift)
            rate = beam.direction[2] - floor.slope_x * beam.direction[0] - steep * d_y
            low, high = cut_stretch(low, high, at - at_least, rate)
            if at_most < math.inf:
                low, high = cut_stretch(low, high, at_most - at, -rate)
        if low > high:
            continue
        if found and found[-1][1] == low:
            found[-1] = (found[-1][0], high)
        else:
            found.append((low, high))
    return found


def cut_stretch(low, high, at, rate):
    """The part of low <= t <= high where at + rate t >= 0."""
    if rate > 0:
        return max(low, -at / rate), high
    if rate < 0:
        return low, min(high, at / -rate)
    return (low, high) if at >= 0 else (math.inf, -math.inf)


# ------------------------------------------------------------------------------------------------------------ what may move, and background

Move = namedtuple("Move", "x y z")
NO_MOVE = Move(0.0, 0.0, 0.0)


def turned_by(beam, tolerances, vector):
    """How far the tip of a vector can move, per axis, when the sensor turns by all three angles within their tolerances."""
    angles = [(math.radians(tolerances[name]), axis) for name, axis in beam.turns]
    total = sum(angle for angle, _ in angles)
    bend = total * total / 2 * math.sqrt(sum(part * part for part in vector))
    x, y, z = vector
    moves = [(abs(e[1] * z - e[2] * y), abs(e[2] * x - e[0] * z), abs(e[0] * y - e[1] * x)) for _, e in angles]
    return Move(*(sum(angle * move[k] for (angle, _), move in zip(angles, moves)) + bend for k in range(3)))


def off_up_to(beam, tolerances, reach):
    """How far the points of the beam up to `reach` can move."""
    if tolerances is None:
        return NO_MOVE
    position = tolerances["position_mm"]
    if beam.length is not None:
        return Move(position, position, position)
    move = turned_by(beam, tolerances, [part * reach for part in beam.direction])
    arm = turned_by(beam, tolerances, beam.arm) if beam.arm else NO_MOVE
    return Move(*(position + move[k] + arm[k] for k in range(3)))


def direction_off(beam, tolerances):
    if tolerances is None:
        return NO_MOVE
    if beam.length is not None:
        return Move(*[2 * tolerances["position_mm"] / beam.length] * 3)
    return turned_by(beam, tolerances, beam.direction)


def stretch_inside(obstacle, beam, grow):
    """Where the beam's line runs inside of the obstacle, grown by (x, y, z, radius): (from, to), or None."""
    x, y, z = beam.origin[0] - obstacle.x, beam.origin[1] - obstacle.y, beam.origin[2]
    dx, dy, dz = beam.direction
    low, high = -math.inf, math.inf
    slabs = [(z, dz, obstacle.from_z - grow[2], obstacle.to_z + grow[2])]
    if isinstance(obstacle, Box):
        c, s = obstacle.turn
        along = obstacle.half_along + abs(c) * grow[0] + abs(s) * grow[1]
        across = obstacle.half_across + abs(s) * grow[0] + abs(c) * grow[1]
        slabs += [(x * c + y * s, dx * c + dy * s, -along, along), (y * c - x * s, dy * c - dx * s, -across, across)]
    else:
        radius = obstacle.radius + grow[3]
        level = math.sqrt(dx * dx + dy * dy)
        beside = radius - (abs(x * dy - y * dx) / level if level > 1e-12 else math.sqrt(x * x + y * y))
        if beside < TIE:
            return None
        if level > 1e-12:
            foot = -(x * dx + y * dy) / (level * level)
            half_chord = math.sqrt(beside * (2 * radius - beside)) / level
            low, high = foot - half_chord, foot + half_chord
    for at, rate, least, most in slabs:
        if abs(rate) < 1e-12:
            if not least + TIE < at < most - TIE:
                return None
        else:
            ends = ((least - at) / rate, (most - at) / rate)
            low, high = max(low, min(ends)), min(high, max(ends))
    return (low, high) if low + TIE < high else None


class Surroundings:
    """One state of the door, with the tolerances or without: what a beam may see in a field there. What was computed once is kept."""

    def __init__(self, door, state, tolerances):
        self.door, self.state, self.tolerances = door, state, tolerances
        self.kept = {}

    def learned(self, sensor):
        return next(state for state in self.door.states if state.id == sensor.learned_in)

    def background(self, state, beam, grow, floor_rise, reach_y):
        """The distance at which the beam ends with nobody there."""
        stretches = stretches_over_floor(state.floor, beam, floor_rise, math.inf, reach_y)
        end = stretches[0][1] if stretches and stretches[0][0] == 0 else 0.0
        for obstacle in state.obstacles:
            inside = stretch_inside(obstacle, beam, grow)
            if inside and inside[1] > TIE:
                end = min(end, max(0.0, inside[0]))
        return end

    def windows(self, sensor, field, beam, off, off_y, tolerances):
        """The stretches along the beam in which a point counts, shrunk by what may move; `off_y` is the largest of the field's beams."""
        length = tolerances["length_mm"] if tolerances else 0.0
        range_left = 1 - tolerances["range_percent"] / 100 if tolerances else 1.0
        grow = growth(off, length)
        end = sensor.max_range * range_left
        for state in {self.learned(sensor).id: self.learned(sensor), self.state.id: self.state}.values():
            end = min(end, self.background(state, beam, grow, self.rise(state, off, tolerances), off_y) - sensor.margin)
        low, high = 0.0, end
        for k, least, most in ((0, field.x_min, field.x_max), (1, field.y_min, field.y_max)):
            if least > -math.inf:
                low, high = cut_stretch(low, high, beam.origin[k] - least - off[k], beam.direction[k])
            if most < math.inf:
                low, high = cut_stretch(low, high, most - off[k] - beam.origin[k], -beam.direction[k])
        if not low < high:
            return []
        rise = self.rise(self.state, off, tolerances)
        over = stretches_over_floor(self.state.floor, beam, field.clearance + rise, field.top - rise, off_y)
        return [(max(low, start), min(high, stop)) for start, stop in over if max(low, start) < min(high, stop)]

    def rise(self, state, off, tolerances):
        return off.z + abs(state.floor.slope_x) * off.x + (tolerances["floor_mm"] if tolerances else 0.0)

    def moving(self, sensor, field, plane, index):
        """The beam's windows, how far its points can move, and how far along it that holds."""
        key = (sensor.id, field.id, plane, index)
        if key not in self.kept:
            self.kept[key] = self.moving_now(sensor, field, sensor.planes[plane][index])
        return self.kept[key]

    def moving_now(self, sensor, field, beam):
        reach = self.reach_of(sensor, field, beam)
        if reach == 0:
            return [], NO_MOVE, reach
        off = off_up_to(beam, self.tolerances, reach)
        return self.windows(sensor, field, beam, off, self.largest_off_y(sensor, field), self.tolerances), off, reach

    def reach_of(self, sensor, field, beam):
        """T: how far along the beam anything matters, the end of its last window and the margin behind it."""
        key = (sensor.id, field.id, id(beam))
        if key not in self.kept:
            windows = self.windows(sensor, field, beam, NO_MOVE, 0.0, None)
            self.kept[key] = windows[-1][1] + sensor.margin if windows else 0.0
        return self.kept[key]

    def largest_off_y(self, sensor, field):
        if self.tolerances is None:
            return 0.0
        key = (sensor.id, field.id, "off")
        if key not in self.kept:
            beams = [beam for plane in field.planes for beam in sensor.planes[plane]]
            self.kept[key] = max([0.0] + [off_up_to(beam, self.tolerances, self.reach_of(sensor, field, beam)).y for beam in beams])
        return self.kept[key]

    def is_blocked(self, beam, tolerances):
        """Whether an obstacle or the floor interrupts a segment, or could within the tolerances."""
        off = off_up_to(beam, tolerances, beam.length)
        grow = growth(off, tolerances["length_mm"] if tolerances else 0.0)
        for obstacle in self.state.obstacles:
            inside = stretch_inside(obstacle, beam, grow)
            if inside and inside[0] < beam.length - TIE and inside[1] > TIE:
                return True
        over = stretches_over_floor(self.state.floor, beam, self.rise(self.state, off, tolerances) - TIE, math.inf, off.y)
        return not over or over[0][0] > 0 or over[0][1] < beam.length - TIE


def growth(off, length):
    """By how much obstacles grow along x, y, z, and the radius of a post."""
    x, y, z = (part + length for part in off)
    return x, y, z, math.sqrt(x * x + y * y)


def reach_at(sensor, door, reflectance, cosine, range_left):
    """Distance at which a face of this reflectance, met at this cosine, still returns enough light."""
    if cosine <= 0:
        return 0.0
    square = sensor.range_ref * range_left * math.sqrt(reflectance * cosine / sensor.reflectance_ref)
    reach = square
    if door.extinction_per_mm > 0:  # R exp(sigma R) = square, from below by halving
        low, high = 0.0, square
        for _ in range(200):
            reach = (low + high) / 2
            low, high = (reach, high) if reach * math.exp(door.extinction_per_mm * reach) <= square else (low, reach)
        reach = low
    return min(sensor.max_range * range_left, reach)


# -------------------------------------------------------------------------------------------------------------------- expressions on a tile


def plus(a, b, more=0.0):
    return a[0] + b[0], a[1] + b[1], a[2] + b[2] + more


def minus(a, b, more=0.0):
    return a[0] - b[0], a[1] - b[1], a[2] - b[2] + more


def times(factor, a, more=0.0):
    return factor * a[0], factor * a[1], factor * a[2] + more


def largest(a, tile):
    x0, x1, y0, y1 = tile
    return a[2] + (a[0] * x1 if a[0] > 0 else a[0] * x0) + (a[1] * y1 if a[1] > 0 else a[1] * y0)


def holds(options, tile):
    return any(all(largest(each, tile) < -SPARE for each in option) for option in options)


def at(a, x, y):
    return a[0] * x + a[1] * y + a[2]


def corners(tile):
    x0, x1, y0, y1 = tile
    return (x0, y0), (x1, y0), (x0, y1), (x1, y1)


# --------------------------------------------------------------------------------------------------------------------------- a tile is seen

Slice = namedtuple("Slice", "body posture yaw half_width turn_share")  # middle yaw, half of its width; 2 sin(width / 4)
SeenBeam = namedtuple("SeenBeam", "beam faces windows off direction_off reach blocked")


def slice_of(body, posture, part, of):
    width = (posture.yaw_to - posture.yaw_from) / of
    return Slice(body, posture, posture.yaw_from + width * (part + 0.5), width / 2, 2 * math.sin(math.radians(width) / 4))


class BoxSight:
    """The conditions under which one beam sees one box on a tile of one root (docs/evidence.md, "A seen leaf")."""

    def __init__(self, seen, sensor, piece, floor_mm, door, slice, range_left):
        posture, spot = slice.posture, sensor.spot
        half_a, half_b = posture.a / 2 - spot, posture.b / 2 - spot
        c, s = turn_of(slice.yaw)
        d, o, off, d_off = seen.beam.direction, seen.beam.origin, rounded(seen.off), seen.direction_off
        turned = slice.turn_share * math.sqrt(half_a * half_a + half_b * half_b)
        d_turned = slice.turn_share * math.sqrt(d[0] * d[0] + d[1] * d[1])
        # STRICTER: a direction that is off and a body that is turned change the cosine by the product of both as well
        self.both_turned = slice.turn_share * math.sqrt(d_off.x * d_off.x + d_off.y * d_off.y)
        along_u = mixed(off, c, s) + turned, mixed(d_off, c, s) + d_turned
        along_v = mixed(off, s, c) + turned, mixed(d_off, s, c) + d_turned
        # per axis: where the beam starts, its slope, the middle of the body, its lower and upper face, off, e_d
        self.axes = {
            ALONG_U: (o[0] * c + o[1] * s, d[0] * c + d[1] * s, (c, s, 0.0), -half_a, half_a, *along_u),
            ALONG_V: (o[1] * c - o[0] * s, d[1] * c - d[0] * s, (-s, c, 0.0), -half_b, half_b, *along_v),
            UPWARD: (o[2], d[2], piece, spot, posture.c - spot, off.z + floor_mm, d_off.z),
        }
        self.enters, self.leaves, self.e = {}, {}, {}
        for axis, (start, slope, middle, low, high, axis_off, slope_off) in self.axes.items():
            if abs(slope) <= slope_off or abs(slope) < LEVEL:
                continue
            first, last = (low, high) if slope > 0 else (high, low)
            self.enters[axis] = times(1 / slope, plus(middle, (0.0, 0.0, first - start)))
            self.leaves[axis] = times(1 / slope, plus(middle, (0.0, 0.0, last - start)))
            self.e[axis] = axis_off / abs(slope)
        is_segment = seen.beam.length is not None
        self.conditions = self.hit() + (self.in_segment(seen) if is_segment else self.in_field(seen, sensor, door, slice, range_left))

    def stands(self, axis, when):
        """The beam at the time `when` stands between the faces of an axis that it does not enter."""
        start, slope, middle, low, high, axis_off, _ = self.axes[axis]
        place = minus(times(slope, when, start), middle)
        return [times(-1, place, low + axis_off), plus(place, (0.0, 0.0, axis_off - high))]

    def hit(self):
        level = [axis for axis in self.axes if axis not in self.enters]
        if not self.enters:
            return [("hit", [])]
        found = [
            ("hit", [[minus(enter, leave, self.e[k] + self.e[j])]]) for k, enter in self.enters.items() for j, leave in self.leaves.items()
        ]
        return found + [("hit", [self.stands(m, plus(enter, (0.0, 0.0, self.e[k])))]) for m in level for k, enter in self.enters.items()]

    def faces(self, allowed):
        """Each axis that is not among the allowed ones has been passed before another one is entered."""
        found = []
        for m in self.axes:
            if allowed & m:
                continue
            if m in self.enters:
                late = [[minus(self.enters[m], self.enters[k], self.e[m] + self.e[k])] for k in self.enters if k != m]
            else:
                late = [self.stands(m, plus(self.enters[k], (0.0, 0.0, -self.e[k]))) for k in self.enters]
            found.append(("faces", late))
        return found

    def in_field(self, seen, sensor, door, slice, range_left):
        cosines = [
            abs(slope) - slope_off - (0.0 if axis == UPWARD else self.both_turned)
            for axis, (_, slope, _, _, _, _, slope_off) in self.axes.items()
            if seen.faces & axis
        ]
        cosine = min(cosines, default=0.0)
        reach = reach_at(sensor, door, slice.body.reflectance, cosine, range_left)
        options = []
        for start, end in seen.windows:
            before = [plus(enter, (0.0, 0.0, self.e[k] - min(reach, end))) for k, enter in self.enters.items()]
            options += [before + [times(-1, enter, start + self.e[k])] for k, enter in self.enters.items()]
        within = [[plus(enter, (0.0, 0.0, self.e[k] - reach)) for k, enter in self.enters.items()]]
        return self.faces(seen.faces) + [("reach", within), ("window", options)]

    def in_segment(self, seen):
        found = [("segment", [[plus(enter, (0.0, 0.0, self.e[k] - seen.beam.length))]]) for k, enter in self.enters.items()]
        found += [("segment", [[times(-1, leave, self.e[k])]]) for k, leave in self.leaves.items()]
        ahead = [[times(-1, enter, -self.e[k])] for k, enter in self.enters.items()]
        for m in self.axes:
            if m not in self.enters:  # where the body covers the start, the beam stands between these faces there as well
                found.append(("segment", [self.stands(m, (0.0, 0.0, 0.0))] + ahead))
        return found + ([("faces", [])] if seen.faces != 7 else []) + ([("interrupted", [])] if seen.blocked else [])

    def failing(self, tile):
        return next((rule for rule, options in self.conditions if not holds(options, tile)), None)


def rounded(off):
    return Move(*(part + ROUNDING for part in off))


def mixed(off, c, s):
    return off.x * abs(c) + off.y * abs(s)


class CylinderSight:
    """The same for a cylinder. Its side is entered at a convex function of the placement, its ends at a straight one."""

    def __init__(self, seen, sensor, piece, floor_mm, door, slice, range_left):
        d, o, off, d_off = seen.beam.direction, seen.beam.origin, rounded(seen.off), seen.direction_off
        self.seen, self.windows = seen, seen.windows
        self.radius, self.low, self.high = slice.posture.a - sensor.spot, sensor.spot, slice.posture.c - sensor.spot
        self.piece, self.o, self.d, self.off_z = piece, o, d, off.z + floor_mm
        self.level = math.sqrt(d[0] * d[0] + d[1] * d[1])
        self.off_level = math.sqrt(off.x * off.x + off.y * off.y)
        level_off = d_off.x + d_off.y
        self.has_side = self.level > level_off and self.level >= LEVEL
        self.has_end = abs(d[2]) > d_off.z and abs(d[2]) >= LEVEL
        if self.has_side:
            square = self.level * self.level
            self.foot = (d[0] / square, d[1] / square, -(o[0] * d[0] + o[1] * d[1]) / square)
            self.beside = (d[1] / self.level, -d[0] / self.level, (o[1] * d[0] - o[0] * d[1]) / self.level)
        if self.has_end:
            first, last = (self.low, self.high) if d[2] > 0 else (self.high, self.low)
            self.end_in = times(1 / d[2], plus(piece, (0.0, 0.0, first - o[2])))
            self.end_out = times(1 / d[2], plus(piece, (0.0, 0.0, last - o[2])))
            self.e_end = self.off_z / abs(d[2])
        else:
            self.e_end = 0.0
        if seen.beam.length is None:
            self.side_reach = reach_at(sensor, door, slice.body.reflectance, self.level - level_off, range_left)
            self.end_reach = reach_at(sensor, door, slice.body.reflectance, abs(d[2]) - d_off.z, range_left)
            # off grows straight with the way: where the foot of the axis lies behind `reach`, the line may pass the axis farther off
            self.off_level_rate = math.sqrt(d_off.x * d_off.x + d_off.y * d_off.y)

    def stands_upright(self, t, x, y):
        """At t the beam stands between bottom and top, by more than it can move."""
        height = self.o[2] + t * self.d[2] - at(self.piece, x, y)
        return self.low + self.off_z + SPARE < height < self.high - self.off_z - SPARE

    def stands_within(self, t, x, y):
        """At t the beam stands inside of the side, by more than it can move."""
        dx, dy = self.o[0] + t * self.d[0] - x, self.o[1] + t * self.d[1] - y
        return math.sqrt(dx * dx + dy * dy) < self.radius - self.off_level - SPARE

    def failing(self, tile):
        if not (self.has_side or self.has_end) or self.radius - self.off_level <= SPARE:
            return "hit"
        entries = []
        largest_beside = 0.0
        for x, y in corners(tile):
            side_in, side_out, side_early = -math.inf, math.inf, -math.inf
            if self.has_side:
                beside = abs(at(self.beside, x, y))
                narrow = self.radius - self.off_level
                if not beside < narrow - SPARE:
                    return "hit"
                half_chord = math.sqrt(narrow * narrow - beside * beside) / self.level
                foot = at(self.foot, x, y)
                side_in, side_out = foot - half_chord, foot + half_chord
                side_early = foot - (self.radius + self.off_level) / self.level
                largest_beside = max(largest_beside, beside + self.beyond_reach(foot))
            if self.has_end:
                end_in, end_out = at(self.end_in, x, y), at(self.end_out, x, y)
                if not self.has_side and not self.stands_within(end_in + self.e_end, x, y):
                    return "hit"
            else:
                end_in, end_out = -math.inf, math.inf
                if not self.stands_upright(side_in, x, y):
                    return "hit"
            if not max(side_in, end_in + self.e_end) < min(side_out, end_out - self.e_end) - SPARE:
                return "hit"
            entries.append((side_in, side_out, side_early, end_in, end_out, x, y))
        if self.seen.beam.length is not None:
            return self.failing_segment(entries)
        return self.failing_field(entries, largest_beside)

    def beyond_reach(self, foot):
        """The line passes the axis farther off by what it turns behind the reach for which `off` holds."""
        return max(0.0, foot - self.seen.reach) * self.off_level_rate if self.seen.beam.length is None else 0.0

    def failing_segment(self, entries):
        if self.seen.blocked:
            return "interrupted"
        if self.seen.faces != SIDE | END:
            return "faces"
        for side_in, side_out, _, end_in, end_out, x, y in entries:
            first = max(side_in, end_in + self.e_end)
            if not (first < self.seen.beam.length - SPARE and min(side_out, end_out - self.e_end) > SPARE):
                return "segment"
        ahead = any(min(times_in) > SPARE for times_in in ([e[0] for e in entries], [e[3] + self.e_end for e in entries]))
        if not ahead:  # as for a box
            for *_, x, y in entries:
                if not (self.has_side or self.stands_within(0.0, x, y)) or not (self.has_end or self.stands_upright(0.0, x, y)):
                    return "segment"
        return None

    def failing_field(self, entries, largest_beside):
        faces = self.seen.faces
        if not faces & (SIDE | END) or faces & ~(SIDE | END):
            return "faces"
        if not faces & SIDE:
            if self.has_side:
                late = all(end_in - self.e_end > side_in + SPARE for side_in, _, _, end_in, *_ in entries)
            else:
                late = all(self.stands_within(end_in - self.e_end, x, y) for *_, end_in, _, x, y in entries)
            if not late:
                return "faces"
        if not faces & END and (self.has_end or not all(self.stands_upright(early, x, y) for _, _, early, *_, x, y in entries)):
            return "faces"
        reach = self.end_reach if faces & END else math.inf
        if faces & SIDE:
            ratio = (largest_beside + self.off_level) / self.radius
            if ratio >= 1:
                return "reach"
            reach = min(reach, self.side_reach * math.sqrt(math.sqrt(1 - ratio * ratio)))
        last = max(max(side_in, end_in + self.e_end) for side_in, _, _, end_in, *_ in entries)
        if not last < reach - SPARE:
            return "reach"
        # the later of two straight bounds is smallest inside of a tile, so one of both has to do at all corners
        first = max(min(early for _, _, early, *_ in entries), min(end_in for _, _, _, end_in, *_ in entries) - self.e_end)
        return None if any(start < first - SPARE and last < end - SPARE for start, end in self.windows) else "window"


# ----------------------------------------------------------------------------------------------------------------------- a tile is not free


class Overlap:
    """The conditions under which a body of a slice overlaps one obstacle at all placements of a tile."""

    def __init__(self, obstacle, slice, piece, tolerances):
        posture = slice.posture
        length, floor_mm = (tolerances["length_mm"], tolerances["floor_mm"]) if tolerances else (0.0, 0.0)
        from_z, to_z = obstacle.from_z + length, obstacle.to_z - length
        self.conditions = [[[plus(piece, (0.0, 0.0, floor_mm - to_z))]], [[times(-1, piece, floor_mm + from_z - posture.c)]]]
        self.near = None
        half_a, half_b, radius = posture.a / 2, posture.b / 2, posture.a
        if posture.shape == "box" and slice.turn_share > 0:
            turned = slice.turn_share * math.sqrt(half_a * half_a + half_b * half_b)
            half_a, half_b = half_a - turned, half_b - turned
        body = (radius,) if posture.shape == "cylinder" else (half_a, half_b)
        other = (obstacle.radius - length,) if isinstance(obstacle, Post) else (obstacle.half_along - length, obstacle.half_across - length)
        if not min(body + other + (to_z - from_z,)) > SPARE:  # of something that may vanish nothing is proved
            self.conditions = [[]]
        elif len(body) == 2 and len(other) == 2:
            self.conditions += box_overlaps_box(turn_of(slice.yaw), body, obstacle, other)
        else:
            self.near = (body, turn_of(slice.yaw), obstacle, other)

    def holds(self, tile):
        if not all(holds(options, tile) for options in self.conditions):
            return False
        return self.near is None or all(disc_gap(*self.near, x, y) < -SPARE for x, y in corners(tile))


def box_overlaps_box(turn, body, obstacle, other):
    """Along each axis of both the middles are closer than the half widths together: two straight bounds each."""
    found = []
    for c, s in (turn, obstacle.turn):
        for axis in ((c, s), (-s, c)):
            axes = (*axes_of(turn), *axes_of(obstacle.turn))
            half = sum(size * abs(axis[0] * e[0] + axis[1] * e[1]) for size, e in zip(body + other, axes))
            apart = (axis[0], axis[1], -axis[0] * obstacle.x - axis[1] * obstacle.y)
            found += [[[plus(apart, (0.0, 0.0, -half))]], [[times(-1, apart, -half)]]]
    return found


def axes_of(turn):
    c, s = turn
    return (c, s), (-s, c)


def disc_gap(body, turn, obstacle, other, x, y):
    """How far apart body and obstacle are in the plan, negative where they overlap, when at least one of them is round."""
    dx, dy = obstacle.x - x, obstacle.y - y
    if len(body) == 1 and len(other) == 1:
        return math.sqrt(dx * dx + dy * dy) - body[0] - other[0]
    (c, s), box, radius = (turn, body, other[0]) if len(body) == 2 else (obstacle.turn, other, body[0])
    along, across = abs(dx * c + dy * s) - box[0], abs(dy * c - dx * s) - box[1]
    return math.sqrt(max(along, 0.0) ** 2 + max(across, 0.0) ** 2) - radius


# ----------------------------------------------------------------------------------------------------------------------------- one coverage

Counts = namedtuple("Counts", "fields obstacles sights slices")


class Coverage:
    """Checks what the evidence claims for one zone in one state."""

    def __init__(self, door, claim, place, budget):
        self.door, self.claim, self.place, self.budget = door, claim, place, budget
        self.issues = []
        self.leaves = {"seen": 0, "notFree": 0, "open": 0}
        self.open_tiles = []  # for each root: the codes of its open tiles, over all slices

    def check(self):
        """What is proved; the issues are empty if everything claimed is true."""
        try:
            self.read_head()
            self.read_sights()
            slices = self.read_slices()
            self.open_tiles = [set() for _ in self.roots]
            for i, (slice, trees) in enumerate(slices):
                self.check_slice(slice, trees, f"{self.place}/slices/{i}")
            for i, case in enumerate(self.listed("worstCases")):
                self.tried(lambda: self.check_worst_case(case, f"{self.place}/worstCases/{i}", [slice for slice, _ in slices]))
        except Refused as error:
            self.add(error)
        return self.result() if not self.issues else None

    def tried(self, check):
        try:
            check()
        except Refused as error:
            self.add(error)

    def add(self, error):
        self.issues.append(error.issue)
        if len(self.issues) >= self.budget.most_issues:
            raise TooMany()

    def named(self, name, among, what):
        found = next((each for each in among if each.id == self.claim.get(name)), None)
        if found is None:
            raise Refused(f"{self.place}/{name}", f"the id of a {what} of the door", shown(self.claim.get(name)))
        return found

    def listed(self, name):
        value = self.claim.get(name)
        if not isinstance(value, list):
            raise Refused(f"{self.place}/{name}", "a list", shown(value))
        return value

    def read_head(self):
        if not isinstance(self.claim, dict):
            raise Refused(self.place, "an object", shown(self.claim))
        self.zone = self.named("zone", self.door.zones, "zone")
        self.state = self.named("state", self.door.states, "state")
        self.tolerances = self.claim.get("tolerances", 0)
        if self.tolerances is not None and (self.door.tolerances is None or self.tolerances != self.door.tolerances):
            raise Refused(f"{self.place}/tolerances", "null, or the tolerances of the door file", shown(self.tolerances))
        smallest = self.claim.get("smallest_mm")
        if not is_number(smallest) or smallest <= 0:
            raise Refused(f"{self.place}/smallest_mm", "a number above 0", shown(smallest))
        self.surroundings = Surroundings(self.door, self.state, self.tolerances)
        self.as_written = Surroundings(self.door, self.state, None)
        self.floor_mm = self.tolerances["floor_mm"] if self.tolerances else 0.0
        self.range_left = 1 - self.tolerances["range_percent"] / 100 if self.tolerances else 1.0
        self.read_fields()
        known = {obstacle.id: obstacle for obstacle in self.state.obstacles}
        ids = self.listed("obstacles")
        if not all(isinstance(name, str) for name in ids) or sorted(ids) != sorted(known):
            raise Refused(f"{self.place}/obstacles", f"each obstacle of the state once: {shown(sorted(known))}", shown(ids))
        self.obstacles = [known[name] for name in ids]
        self.roots = roots_of(self.zone, self.state.floor)

    def read_fields(self):
        fields = [(sensor, field) for sensor in self.door.sensors for field in sensor.fields]
        counting = {f"{sensor.id}/{field.id}": (sensor, field) for sensor, field in fields if counts(field, self.zone)}
        names = self.listed("fields")
        if not all(isinstance(name, str) for name in names) or sorted(names) != sorted(counting):
            raise Refused(f"{self.place}/fields", f"each field that counts for the zone once: {shown(sorted(counting))}", shown(names))
        self.fields = [counting[name] for name in names]

    def read_sights(self):
        self.sights = []
        for i, sight in enumerate(self.listed("sights")):
            place = f"{self.place}/sights/{i}"
            if not isinstance(sight, list) or len(sight) != 4 or not isinstance(sight[3], list):
                raise Refused(place, "[field, plane, first beam, [faces]]", shown(sight))
            field, plane, first, faces = sight
            if not is_count(field, len(self.fields)):
                raise Refused(place, f"a field below {len(self.fields)}", shown(field))
            sensor, used = self.fields[field]
            if not is_count(plane, len(sensor.planes)) or plane not in used.planes:
                raise Refused(place, "a plane of the field", shown(plane))
            if not is_count(first, len(sensor.planes[plane])) or first + used.cluster > len(sensor.planes[plane]):
                raise Refused(place, f"{used.cluster} beams of a plane of {len(sensor.planes[plane])}", f"from {shown(first)} on")
            if len(faces) != used.cluster or not all(is_count(face, 8) and face > 0 for face in faces):
                raise Refused(place, f"faces (1 to 7) of {used.cluster} beams", shown(faces))
            self.sights.append((sensor, used, plane, first, faces))

    def read_slices(self):
        """Every body of the zone in every posture, every part of it once, with one tree for each root."""
        wanted = {(name, i): None for name in self.zone.bodies for i in range(len(self.body(name).postures))}
        given, slices = {}, []
        for i, slice in enumerate(self.listed("slices")):
            place = f"{self.place}/slices/{i}"
            if not isinstance(slice, dict):
                raise Refused(place, "an object", shown(slice))
            key = (slice.get("body"), slice.get("posture"))
            if not isinstance(key[0], str) or type(key[1]) is not int or key not in wanted:
                raise Refused(place, "a body of the zone in one of its postures", shown(list(key)))
            part, of = slice.get("part"), slice.get("of")
            if not is_count(of) or not is_count(part, of) or given.setdefault(key, of) != of:
                raise Refused(place, "parts of the posture, all of one size", f"part {shown(part)} of {shown(of)}")
            trees = slice.get("trees")
            if not isinstance(trees, list) or len(trees) != len(self.roots):
                raise Refused(f"{place}/trees", f"{len(self.roots)} trees", f"{len(trees)}" if isinstance(trees, list) else shown(trees))
            slices.append((key, part, of, trees))
        parts = sorted((key, part) for key, part, _, _ in slices)
        if any(a == b for a, b in zip(parts, parts[1:])):
            raise Refused(f"{self.place}/slices", "each part once", "one of them twice")
        missing = [key for key in wanted if key not in given or len(slices) < len(parts) or sum(p[0] == key for p in parts) != given[key]]
        if missing:
            raise Refused(f"{self.place}/slices", "every body in every posture, in all its parts", f"not all of {shown(list(missing[0]))}")
        return [(slice_of(self.body(key[0]), self.body(key[0]).postures[key[1]], part, of), trees) for key, part, of, trees in slices]

    def body(self, name):
        return next(body for body in self.door.bodies if body.id == name)

    def check_slice(self, slice, trees, place):
        for r, (root, tree) in enumerate(zip(self.roots, trees)):
            piece = floor_affine(self.state.floor, (root[2] + root[3]) / 2)
            checks = {}

            def check(node, tile):
                return self.check_leaf(node, tile, slice, piece, checks)

            self.tried(lambda: self.walk(tree, root, check, self.open_tiles[r], f"{place}/trees/{r}"))

    def walk(self, tree, root, check, open_codes, place):
        """Goes through a tree in preorder without recursion. A tile's code is 1, then one binary digit for each split on the way to it."""
        if not isinstance(tree, list) or len(tree) > MOST_NODES:
            raise Refused(place, f"a list of at most {MOST_NODES} nodes", f"{len(tree)}" if isinstance(tree, list) else shown(tree))
        waiting = [(root, 1)]
        for i, node in enumerate(tree):
            if not waiting:
                raise Refused(f"{place}/{i}", "the end of the tree", "more nodes")
            tile, code = waiting.pop()
            if type(node) is not int:
                raise Refused(f"{place}/{i}", "a whole number", shown(node))
            if node == -1:
                if code.bit_length() > MOST_SPLITS:
                    raise Refused(f"{place}/{i}", f"at most {MOST_SPLITS} nested splits", "more")
                lower, upper = halves(tile)
                waiting.append((upper, 2 * code + 1))
                waiting.append((lower, 2 * code))
            elif node == -2:
                self.leaves["open"] += 1
                open_codes.add(code)
            else:
                self.tried(lambda: self.refuse_unless_true(check(node, tile), node, tile, f"{place}/{i}"))
        if waiting:
            raise Refused(place, "a whole tree", f"an end with {len(waiting)} tiles missing")

    def refuse_unless_true(self, wrong, node, tile, place):
        if wrong is None:
            self.leaves["seen" if node >= 0 else "notFree"] += 1
            return
        x0, x1, y0, y1 = tile
        raise Refused(f"{place} (x {x0:g} to {x1:g}, y {y0:g} to {y1:g})", *wrong)

    def check_leaf(self, node, tile, slice, piece, checks):
        """None, or (expected, got)."""
        if node < 0:
            n = -3 - node
            if n >= len(self.obstacles):
                return f"an obstacle below {len(self.obstacles)}", f"{n}"
            if node not in checks:
                checks[node] = Overlap(self.obstacles[n], slice, piece, self.tolerances)
            self.budget.spend(1)
            overlaps = checks[node].holds(tile)
            return None if overlaps else (f"an overlap with {shown(self.obstacles[n].id)} at all placements", "none at some")
        if node >= len(self.sights):
            return f"a sight below {len(self.sights)}", f"{node}"
        if node not in checks:
            if len(checks) * len(self.sights[node][4]) > MOST_KEPT:
                checks.clear()
            checks[node] = self.sight_checks(self.sights[node], slice, piece)
        for k, beam in enumerate(checks[node]):
            self.budget.spend(1)
            rule = beam.failing(tile)
            if rule:
                return f"the tile seen by sight {node}", f"beam {self.sights[node][3] + k} fails the rule {shown(rule)}"
        return None

    def sight_checks(self, sight, slice, piece):
        sensor, field, plane, first, faces = sight
        kind = CylinderSight if slice.posture.shape == "cylinder" else BoxSight
        self.budget.spend(20 * field.cluster)
        return [
            kind(self.seen_beam(sensor, field, plane, first + k, faces[k]), sensor, piece, self.floor_mm, self.door, slice, self.range_left)
            for k in range(field.cluster)
        ]

    def seen_beam(self, sensor, field, plane, index, faces):
        beam = sensor.planes[plane][index]
        d_off = direction_off(beam, self.tolerances)
        if sensor.kind == "segments":
            off = off_up_to(beam, self.tolerances, beam.length)
            return SeenBeam(beam, faces, [], off, d_off, beam.length, self.surroundings.is_blocked(beam, self.tolerances))
        windows, off, reach = self.surroundings.moving(sensor, field, plane, index)
        return SeenBeam(beam, faces, windows, off, d_off, reach, False)

    def check_worst_case(self, case, place, slices):
        WorstCase(self, case, place, slices).check()

    def result(self):
        open_mm2, group = open_area(self.roots, self.open_tiles)
        return {
            "zone": self.zone.id,
            "state": self.state.id,
            "tolerances": self.tolerances is not None,
            "leaves": self.leaves,
            "allSeen": self.leaves["open"] == 0,
            "open_mm2": open_mm2,
            "zone_mm2": (self.zone.x_max - self.zone.x_min) * (self.zone.y_max - self.zone.y_min),
            "largestOpen": group,
            "worstCases": len(self.claim["worstCases"]),
        }


class TooMany(Exception):
    """Enough issues were found."""


def counts(field, zone):
    """A field counts when it acts for the zone's function and does not let a body go before the longest stay is over."""
    held = field.presence_time is None or zone.longest_stay is None or field.presence_time >= zone.longest_stay
    return field.function == zone.function and held


def roots_of(zone, floor):
    """The zone's rectangle, cut at every y of the profile inside of it."""
    cuts = [zone.y_min] + [y for y, _ in floor.profile if zone.y_min < y < zone.y_max] + [zone.y_max]
    return [(zone.x_min, zone.x_max, y0, y1) for y0, y1 in zip(cuts, cuts[1:])]


def halves(tile):
    x0, x1, y0, y1 = tile
    if x1 - x0 >= y1 - y0:
        middle = (x0 + x1) / 2
        return (x0, middle, y0, y1), (middle, x1, y0, y1)
    middle = (y0 + y1) / 2
    return (x0, x1, y0, middle), (x0, x1, middle, y1)


# ------------------------------------------------------------------------------------------------------------------------------ worst cases


class WorstCase:
    """One placement of one body that no field sees: for each beam the rule that it fails, as the door is written."""

    def __init__(self, coverage, case, place, slices):
        self.coverage, self.place, self.case = coverage, place, case
        self.slices = slices

    def check(self):
        case, coverage = self.case, self.coverage
        if not isinstance(case, dict):
            raise Refused(self.place, "an object", shown(case))
        if not isinstance(case.get("pocket"), str):
            raise Refused(f"{self.place}/pocket", "a letter", shown(case.get("pocket")))
        if not is_count(case.get("slice"), len(self.slices)):
            raise Refused(f"{self.place}/slice", f"a slice below {len(self.slices)}", shown(case.get("slice")))
        self.slice = self.slices[case["slice"]]
        for name in ("x_mm", "y_mm", "yaw_deg"):
            if not is_number(case.get(name)):
                raise Refused(f"{self.place}/{name}", "a number", shown(case.get(name)))
        self.x, self.y, self.yaw = float(case["x_mm"]), float(case["y_mm"]), float(case["yaw_deg"])
        zone = coverage.zone
        # STRICTER: elsewhere it would say nothing of the zone
        if not (zone.x_min <= self.x <= zone.x_max and zone.y_min <= self.y <= zone.y_max):
            raise Refused(self.place, "a placement in the zone", f"({self.x:g}, {self.y:g})")
        if self.slice.posture.shape == "box" and abs(self.yaw - self.slice.yaw) > self.slice.half_width + TIE:
            raise Refused(f"{self.place}/yaw_deg", f"a yaw within {self.slice.half_width:g} of {self.slice.yaw:g}", f"{self.yaw:g}")
        self.floor_z = profile_at(coverage.state.floor, self.y) + coverage.state.floor.slope_x * self.x
        self.must_be_free()
        self.must_be_unseen()

    def must_be_free(self):
        posture = self.slice.posture
        turned = self.slice._replace(yaw=self.yaw, half_width=0.0, turn_share=0.0)
        here = (self.x, self.x, self.y, self.y)
        for obstacle in self.coverage.state.obstacles:
            if Overlap(obstacle, turned, (0.0, 0.0, self.floor_z), None).holds(here):
                raise Refused(self.place, f"a placement free of {shown(obstacle.id)}", f"posture {posture.shape} overlaps it")

    def must_be_unseen(self):
        given = {}
        fails = self.case.get("fails")
        for entry in fails if isinstance(fails, list) else [fails]:
            is_entry = isinstance(entry, list) and len(entry) == 3
            if not is_entry or not all(is_count(each) for each in entry[:2]) or not isinstance(entry[2], str):
                raise Refused(f"{self.place}/fails", "[field, plane, runs] each", shown(entry))
            if given.setdefault((entry[0], entry[1]), entry[2]) is not entry[2] or len(given) > 32 * 64 * 32:
                raise Refused(f"{self.place}/fails", "each plane of each field once", shown(entry[:2]))
        wanted = {(f, plane) for f, (_, field) in enumerate(self.coverage.fields) for plane in field.planes}
        if sorted(given) != sorted(wanted):
            raise Refused(f"{self.place}/fails", "each plane of each field once", f"{len(given)} of {len(wanted)}")
        for (f, plane), runs in given.items():
            self.check_plane(*self.coverage.fields[f], plane, runs, f"{self.place}/fails, field {f}, plane {plane}")

    def check_plane(self, sensor, field, plane, runs, place):
        beams = sensor.planes[plane]
        if not re.fullmatch(r"(?:[mbrsctn][1-9][0-9]{0,4})*", runs):
            raise Refused(place, "runs of the letters m b r s c t n", shown(runs))
        parsed = [(letter, int(count)) for letter, count in re.findall(r"([a-z])([0-9]+)", runs)]
        if sum(count for _, count in parsed) != len(beams):
            raise Refused(place, f"runs over {len(beams)} beams", f"{sum(count for _, count in parsed)}")
        self.coverage.budget.spend(5 * len(beams))
        index, seen_in_a_row = 0, 0
        for letter, count in parsed:
            seen_in_a_row = seen_in_a_row + count if letter == "n" else 0
            if seen_in_a_row >= field.cluster:
                raise Refused(place, f"fewer than {field.cluster} neighbours that see", f"{seen_in_a_row}")
            for index in range(index, index + count):
                failed, surely = self.rules_failed(sensor, field, beams[index])
                if letter == "n" and surely:
                    raise Refused(f"{place}, beam {index}", "a beam that sees the body", f"it fails {'/'.join(sorted(surely))}")
                if letter != "n" and letter not in failed:
                    raise Refused(f"{place}, beam {index}", f"rule {letter} failed", f"failed: {'/'.join(sorted(failed)) or 'none'}")
            index += 1

    def rules_failed(self, sensor, field, beam):
        """The rules that the beam fails, ties within SPARE included, and those that it fails by more than a tie."""
        entry = self.entry(sensor.spot, beam)
        if beam.length is not None and self.coverage.as_written.is_blocked(beam, None):
            return {"b"} | ({"m"} if entry is None or entry[3] < SPARE else set()), {"b"}
        if entry is None:
            return {"m"}, {"m"}
        enter, leave, cosines, depth = entry
        failed, surely = set(), set()

        def fails(rule, by):
            if by > -SPARE:
                failed.add(rule)
            if by > SPARE:
                surely.add(rule)

        if depth < SPARE:
            failed.add("m")
        if beam.length is not None:
            fails("m", max(enter - beam.length, -leave))
            return failed, surely
        fails("m", -enter)
        learned, now = self.coverage.as_written.learned(sensor), self.coverage.state
        still = (0.0, 0.0, 0.0, 0.0)
        background = min(self.coverage.as_written.background(state, beam, still, 0.0, 0.0) for state in (learned, now))
        fails("b", enter - (background - sensor.margin))
        reaches = [reach_at(sensor, self.coverage.door, self.slice.body.reflectance, cosine, 1.0) for cosine in cosines]
        if enter > min(reaches) - SPARE:
            failed.add("r")
        if enter > max(reaches) + SPARE:
            surely.add("r")
        x, y, z = (start + enter * rate for start, rate in zip(beam.origin, beam.direction))
        fails("s", max(field.x_min - x, x - field.x_max, field.y_min - y, y - field.y_max))
        above = z - profile_at(self.coverage.state.floor, y) - self.coverage.state.floor.slope_x * x
        fails("c", field.clearance - above)
        fails("t", above - field.top)
        return failed, surely

    def entry(self, spot, beam):
        """(in, out, cosines of the faces entered there, how deep) for the line and the body less its spot; None where they do not meet."""
        posture = self.slice.posture
        d = beam.direction
        x, y, z = beam.origin[0] - self.x, beam.origin[1] - self.y, beam.origin[2] - self.floor_z
        slabs = [(z, d[2], spot, posture.c - spot)]
        faces, low, high = [], -math.inf, math.inf
        if posture.shape == "box":
            c, s = turn_of(self.yaw)
            half_a, half_b = posture.a / 2 - spot, posture.b / 2 - spot
            slabs += [(x * c + y * s, d[0] * c + d[1] * s, -half_a, half_a), (y * c - x * s, d[1] * c - d[0] * s, -half_b, half_b)]
        else:
            radius = posture.a - spot
            level = math.sqrt(d[0] * d[0] + d[1] * d[1])
            beside = abs(x * d[1] - y * d[0]) / level if level > 1e-12 else math.sqrt(x * x + y * y)
            if beside >= radius:
                return None
            if level > 1e-12:
                foot, half_chord = -(x * d[0] + y * d[1]) / (level * level), math.sqrt(radius * radius - beside * beside) / level
                low, high = foot - half_chord, foot + half_chord
                faces.append((low, level * math.sqrt(1 - (beside / radius) ** 2)))
        for start, rate, least, most in slabs:
            if abs(rate) < 1e-12:
                if not least < start < most:
                    return None
                continue
            first, last = sorted(((least - start) / rate, (most - start) / rate)) if least < most else (math.inf, -math.inf)
            low, high = max(low, first), min(high, last)
            faces.append((first, abs(rate)))
        if not low < high:
            return None
        return low, high, [cosine for first, cosine in faces if first > low - SPARE], high - low


# -------------------------------------------------------------------------------------------------------------------------------- open area


def open_area(roots, codes_of_roots):
    """The area that is open in some slice, and the largest group of open tiles that touch: its area and extent. Tiles of one root lie
    inside of each other or apart, since all trees halve alike."""
    tiles = []
    for root, codes in zip(roots, codes_of_roots):
        tiles += [tile_of(root, code) for code in codes if not any(code >> k in codes for k in range(1, code.bit_length()))]
    total = math.fsum((x1 - x0) * (y1 - y0) for x0, x1, y0, y1 in tiles)
    if not tiles or len(tiles) > MOST_GROUPED:
        return total, None
    best = max((extent_of(group) for group in groups_of(tiles)), key=lambda group: group["mm2"])
    return total, best


def tile_of(root, code):
    tile = root
    for k in range(code.bit_length() - 2, -1, -1):
        tile = halves(tile)[code >> k & 1]
    return tile


def extent_of(group):
    return {
        "mm2": math.fsum((x1 - x0) * (y1 - y0) for x0, x1, y0, y1 in group),
        "x_mm": [min(tile[0] for tile in group), max(tile[1] for tile in group)],
        "y_mm": [min(tile[2] for tile in group), max(tile[3] for tile in group)],
    }


def groups_of(tiles):
    """Tiles that touch belong together. A line sweeps along x; the tiles that it meets lie one above the other."""
    parent = list(range(len(tiles)))

    def top_of(i):
        while parent[i] != i:
            parent[i] = parent[parent[i]]
            i = parent[i]
        return i

    begins, ends = {}, {}
    for i, (x0, x1, _, _) in enumerate(tiles):
        begins.setdefault(x0, []).append(i)
        ends.setdefault(x1, []).append(i)
    met = []  # (y0, tile) of the tiles under the line, in rising y
    for x in sorted({*begins, *ends}):
        new = sorted((tiles[i][2], i) for i in begins.get(x, []))
        gone = set(ends.get(x, []))
        met = sorted(met + new)
        before = []  # tiles that may still touch one above: at most a few, since those that end and those that begin lie apart each
        for y0, i in met:
            before = [j for j in before if tiles[j][3] >= y0]
            for j in before:
                parent[top_of(i)] = top_of(j)
            before.append(i)
        met = [each for each in met if each[1] not in gone]
    groups = {}
    for i, tile in enumerate(tiles):
        groups.setdefault(top_of(i), []).append(tile)
    return list(groups.values())


# --------------------------------------------------------------------------------------------------------------------------- the whole file


class Budget:
    """How much is checked at most, and a sign of life while it takes long."""

    def __init__(self, most_issues=MOST_ISSUES, quiet=False):
        self.most_issues, self.quiet = most_issues, quiet
        self.spent, self.next_word = 0, 2.0
        self.began = time.monotonic()

    def spend(self, checks):
        self.spent += checks
        if self.spent > MOST_CHECKS:
            raise Refused("coverages", f"at most {MOST_CHECKS} checks of beams", "more")
        if not self.quiet and self.spent % 1024 < checks and time.monotonic() - self.began > self.next_word:
            self.next_word = 2 * (time.monotonic() - self.began)
            print(f"verify: {self.spent} checks done", file=sys.stderr)


def verify(door, data, budget):
    """(exit code, issues, what is proved) of the bytes of an evidence file."""
    issues, proved = [], []
    try:
        plain = unpacked(data)
        if plain.count(b",") > MOST_VALUES:
            raise Refused("file", f"at most {MOST_VALUES} values", "more")
        evidence = read_json(plain, "evidence")
        if not isinstance(evidence, dict):
            raise Refused("file", "an object", shown(evidence))
        version = evidence.get("sillsightEvidence")
        if type(version) is not int or version != 1:
            raise Refused("sillsightEvidence", "version 1", shown(version))
        if evidence.get("doorSha256") != door.sha256:
            raise Refused("doorSha256", f"{door.sha256}, the hash of this door file", shown(evidence.get("doorSha256")))
        coverages = evidence.get("coverages")
        if not isinstance(coverages, list):
            raise Refused("coverages", "a list", shown(coverages))
        known = set()
        for i, claim in enumerate(coverages):
            coverage = Coverage(door, claim, f"coverages/{i}", budget)
            try:
                proved.append(coverage.check())
            finally:
                issues += coverage.issues
            if proved[-1] is None:
                continue
            key = (proved[-1]["zone"], proved[-1]["state"], proved[-1]["tolerances"])
            if key in known:
                issues.append(Refused(f"coverages/{i}", "each zone, state and choice of tolerances once", shown(list(key))).issue)
            known.add(key)
        about_lanes = [(name, evidence.get(name, [])) for name in ("passages", "contacts")]
        if any(claims for _, claims in about_lanes):
            proved += check_lanes(door, about_lanes, budget)
    except Refused as error:
        issues.append(error.issue)
    except TooMany:
        pass
    return (1, issues, []) if issues else (0, [], proved)


def check_lanes(door, about_lanes, budget):
    """What is proved of lanes; refuses with the first thing that is not (see verify_lanes.py, which has to lie beside this file)."""
    import verify_lanes

    lanes, proved = verify_lanes.Lanes(sys.modules[__name__], door, budget), []
    checks = {"passages": verify_lanes.check_passage, "contacts": verify_lanes.check_contact}
    for name, claims in about_lanes:
        if not isinstance(claims, list) or not all(isinstance(claim, dict) for claim in claims):
            raise Refused(name, "a list of objects", shown(claims))
        known = set()
        for i, claim in enumerate(claims):
            proved.append(checks[name](lanes, claim, f"{name}/{i}"))
            key = (proved[-1]["lane"], proved[-1]["state"])
            if key in known:
                raise Refused(f"{name}/{i}", "each lane and state once", shown(list(key)))
            known.add(key)
    return proved


def not_claimed(door, proved):
    """Zones and states about which the evidence says nothing: their verdict stays undetermined."""
    said = {(each["zone"], each["state"]) for each in proved if "zone" in each}
    return [
        {"zone": zone.id, "state": state.id}
        for zone in door.zones for state in door.states
        if zone.purpose != "must-not-see" and (zone.id, state.id) not in said
    ]  # fmt: skip


def lines_of(door, code, issues, proved):
    if code != 0:
        return [f"refused: {each['place']}: expected {each['expected']}, got {each['got']}" for each in issues]
    lines = []
    for each in proved:
        if "lane" in each:
            says = "nobody is struck by the closing leaf" if "ways" in each else f"{each['body']} is struck, at {each['relative_mm_per_s']:.0f} mm/s"
            lines.append(f"{each['lane']}, state {each['state']}: {says}")
            continue
        head = f"{each['zone']}, state {each['state']}, {'for all tolerances' if each['tolerances'] else 'as written'}"
        if each["allSeen"]:
            lines.append(f"{head}: every body that can stand is seen everywhere")
            continue
        share = 100 * each["open_mm2"] / each["zone_mm2"]
        lines.append(f"{head}: {each['open_mm2'] / 1e6:.4f} m2 stay open ({share:.2f} % of the zone), seen or not free elsewhere")
        if each["largestOpen"]:
            group = each["largestOpen"]
            (x0, x1), (y0, y1) = group["x_mm"], group["y_mm"]
            lines.append(f"  largest open group {group['mm2'] / 1e6:.4f} m2: x {x0:.0f} to {x1:.0f}, y {y0:.0f} to {y1:.0f}")
        if each["worstCases"]:
            lines.append(f"  proved blind, as the door is written: {each['worstCases']} placement(s)")
    return lines + [f"{each['zone']}, state {each['state']}: nothing claimed" for each in not_claimed(door, proved)]


def verify_files(door_path, evidence_path, budget, doors):
    """(door or None, exit code, issues, proved). `doors` keeps doors that were read before."""
    try:
        if door_path not in doors:
            doors[door_path] = read_door(door_path)
        try:
            data = read_bytes(evidence_path, MOST_BYTES)
        except Refused as error:
            return doors[door_path], 1, [error.issue], []
        return (doors[door_path], *verify(doors[door_path], data, budget))
    except Unreadable as error:
        return None, 3, [{"place": "file", "expected": "files that can be read", "got": str(error)}], []


def batch(list_path):
    doors = {}
    worst = 0
    for line in read_bytes(list_path, MOST_BYTES).decode().splitlines():
        door_path, evidence_path = line.split("\t")
        _, code, issues, _ = verify_files(door_path, evidence_path, Budget(most_issues=1, quiet=True), doors)
        print(json.dumps({"evidence": evidence_path, "exit": code, "issues": issues}), flush=True)
        worst = max(worst, code)
    return worst


def main(arguments):
    if len(arguments) == 2 and arguments[0] == "--batch":
        return batch(arguments[1])
    as_json = "--json" in arguments
    files = [argument for argument in arguments if argument != "--json"]
    if len(files) != 2 or any(name.startswith("--") for name in files):
        print(__doc__.split("\n\n")[1], file=sys.stderr)
        return 3
    door, code, issues, proved = verify_files(files[0], files[1], Budget(), {})
    if as_json:
        left = not_claimed(door, proved) if door else []
        print(json.dumps({"accepted": code == 0, "exit": code, "issues": issues, "proved": proved, "notClaimed": left}))
    elif code == 3:
        print(issues[0]["got"], file=sys.stderr)
    else:
        print("\n".join(lines_of(door, code, issues, proved)))
    return code


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except Exception:  # not to be taken for a refusal
        traceback.print_exc()
        sys.exit(4)
