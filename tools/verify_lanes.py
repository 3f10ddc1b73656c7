"""The part of tools/verify.py about lanes: that nobody is struck by the closing leaf ("passages"), and that somebody is ("contacts"). Written
from docs/evidence.md and docs/method.md ("Time"). It knows leaves that go down or along, plain bodies and brakes that are at least as hard as
the leaf speeds up; of all else it says that it cannot show it. `v` is the module verify, whose rules for a tile and a placement are used.

Places along the way in mm, slowness in s per mm, times in s. A closing begins at 0; its way is what the edge still has to go.
"""
import math

SPARE_MM = 1e-6
SPARE_S = 1e-9
SLOWEST = 1.0  # mm/s: slower is standing
FARTHEST = 100_000
MOST_SPLITS = 60
STEP = 2  # mm: sight of a contact is asked at places so far apart
LARGEST_FAR = 70_000
SPEED_OFF = 2  # mm/s that a claimed speed may be off, beside what stepping may be

LEAF = "travel thickness_mm bulge_mm parked".split()
DRIVE = (
    "closeSpeed_m_per_s closeAccel_m_per_s2 closeJerk_m_per_s3 stopDelay_s stopDecel_m_per_s2 stopTimes afterStop reverseDelay_s openSpeed_m_per_s"
    " openAccel_m_per_s2 openDelay_s partialOpenings_mm holdOpen_s cycle brake coastDecel_m_per_s2 coastWay_mm movingMass_kg source"
).split()
CYCLE = "holdOpenFrom closesOnlyByTimer preWarning_s outputInWarning attempts attemptPause_s attemptWhileHeld afterAttempts".split()
LANE = (
    "id name who xMin_mm xMax_mm directions slowest_m_per_s fastest_m_per_s bodies longestStay_s falls followGap_mm braking"
).split()


class Lanes:
    """Checks all entries about lanes of one evidence file against one door."""

    def __init__(self, v, door, budget):
        self.v, self.door, self.budget = v, door, budget
        self.survey = v.Entry(door.file.values["survey"], "survey")
        leaf, drive = self.known("leaf", LEAF), self.known("drive", DRIVE)
        opening = v.Entry(self.survey.values["opening"], "survey/opening")
        self.width, self.height = opening.positive("width_mm"), opening.positive("height_mm")
        self.travel = leaf.text("travel")
        if self.travel not in ("down", "toward-zero", "toward-width", "both-inward"):
            self.cannot("survey/leaf/travel", "a leaf that goes down or along", self.travel)
        self.half = leaf.number("thickness_mm") / 2 + leaf.number("bulge_mm", 0)
        self.drive = self.read_drive(drive)
        self.cycle = self.read_cycle(drive)
        self.partial = [float(each) for each in drive.list("partialOpenings_mm", 100, [])]

    def cannot(self, place, expected, got):
        raise self.v.Refused(place, expected, f"{got} (this program cannot show more)")

    def known(self, name, names, of=None):
        entry = self.v.Entry((of or self.survey).values.get(name), f"survey/{name}")
        for each in entry.values:
            if each not in names:
                self.cannot(f"{entry.place}/{each}", "nothing that may change what the leaf does", each)
        return entry

    def read_drive(self, drive):
        accel, speed = 1000 * drive.positive("closeAccel_m_per_s2"), 1000 * drive.positive("closeSpeed_m_per_s")
        if drive.values.get("brake") != "none":
            decel = 1000 * drive.positive("stopDecel_m_per_s2")
        elif drive.has("coastDecel_m_per_s2"):
            decel = 1000 * drive.positive("coastDecel_m_per_s2")
        else:
            decel = speed * speed / (2 * drive.positive("coastWay_mm"))
        if decel < accel:
            self.cannot("survey/drive", "a leaf that slows at least as hard after a stop as it speeds up", f"{decel:g} below {accel:g}")
        jerk = 1000 * drive.positive("closeJerk_m_per_s3") if drive.has("closeJerk_m_per_s3") else None
        return {"speed": speed, "accel": accel, "jerk": jerk, "delay": drive.number("stopDelay_s"), "decel": decel}

    def read_cycle(self, drive):
        """(warning, an output in it cancels, pause before a command or None)"""
        if not drive.has("cycle"):
            return 0.0, False, None
        cycle = self.known("cycle", CYCLE, drive)
        attempts = cycle.number("attempts", 0)
        if attempts > 0 and cycle.values.get("attemptWhileHeld") == "starts":
            self.cannot("survey/drive/cycle/attemptWhileHeld", "closings that begin while no output forbids them", "starts")
        hold = drive.number("holdOpen_s", 0) if cycle.values.get("holdOpenFrom") == "clear" else 0.0
        pause = min(hold, cycle.number("attemptPause_s", hold)) if attempts > 0 else hold
        timer = cycle.values.get("closesOnlyByTimer") == "yes"
        return cycle.number("preWarning_s", 0), cycle.values.get("outputInWarning") == "cancels", pause if timer else None

    def lane(self, name, place):
        found = [each for each in self.survey.entries("lanes", 100, []) if each.values.get("id") == name]
        if len(found) != 1:
            raise self.v.Refused(place, "the id of a lane of the door", self.v.shown(name))
        return Lane(self, found[0])

    def whole(self, floor):
        if self.travel == "down":
            return self.height - self.highest(floor, (0, self.width), self.half)
        return self.width / 2 if self.travel == "both-inward" else self.width

    def highest(self, floor, xs, far):
        ys = [-far, far] + [y for y, _ in floor.profile if -far < y < far]
        return max(self.v.profile_at(floor, y) + floor.slope_x * x for y in ys for x in xs)

    def clear(self, floor, posture, x):
        """The body is met where the edge has less than this to go."""
        half_x, half_y = half_of(self.v, posture)
        if self.travel == "down":
            return self.highest(floor, (x,), self.half + half_y) + posture.c - self.highest(floor, (0, self.width), self.half)
        if self.travel == "toward-zero":
            return x + half_x
        if self.travel == "toward-width":
            return self.width - x + half_x
        return abs(x - self.width / 2) + half_x

    def fields(self):
        return {f"{sensor.id}/{field.id}": (sensor, field) for sensor in self.door.sensors for field in sensor.fields}


class Lane:
    def __init__(self, lanes, given):
        v = lanes.v
        for each in given.values:
            if each not in LANE:
                lanes.cannot(f"{given.place}/{each}", "nothing that may change what happens", each)
        if given.values.get("falls", "never") != "never" or given.has("followGap_mm"):
            lanes.cannot(given.place, "bodies that pass alone and do not fall", "others")
        self.id = given.text("id")
        self.x = given.number("xMin_mm"), given.number("xMax_mm")
        v.must_rise(*self.x, given.place)
        self.slowest, self.fastest = (max(SLOWEST, 1000 * given.number(name)) for name in ("slowest_m_per_s", "fastest_m_per_s"))
        if self.slowest > self.fastest:
            raise given.wrong("fastest_m_per_s", "at least the slowest pace")
        self.sides = [each[-1] for each in given.list("directions", 2, ["from-a", "from-b"])]
        names = list(dict.fromkeys(given.list("bodies", 32, [body.id for body in lanes.door.bodies])))
        self.bodies = [body for name in names for body in lanes.door.bodies if body.id == name]
        if len(self.bodies) != len(names) or not set(self.sides) <= {"a", "b"} or not self.sides:
            raise given.wrong("bodies", "bodies of the door, and sides to come from")
        self.longest_stay = given.positive("longestStay_s") if given.has("longestStay_s") else None

    def postures(self):
        """Those that pass: what comes about by a fall alone does not."""
        for body in self.bodies:
            passes = any(not posture.lies for posture in body.postures)
            for i, posture in enumerate(body.postures):
                if not (posture.lies and passes):
                    yield body, i, posture

    def places(self, half):
        left, middle, right = self.x[0] + half, sum(self.x) / 2, self.x[1] - half
        return [left, middle, right] if left < right else [middle]

    def holds(self, field):
        """It does not let a body go that may stand for so long."""
        held = field.presence_time is None or self.longest_stay is None or field.presence_time >= self.longest_stay
        return field.function == "presence" and held


def half_of(v, posture):
    if posture.shape == "cylinder":
        return posture.a, posture.a
    c, s = (abs(part) / 2 for part in v.turn_of(posture.yaw_from))
    return c * posture.a + s * posture.b, s * posture.a + c * posture.b


# ------------------------------------------------------------------------------------------------------------------------------ the leaf


class Closing:
    """From rest to rest: speeds up, goes evenly, slows down alike; with the jerk up to the acceleration and back where there is one."""

    def __init__(self, way, drive):
        self.way, self.drive = way, drive
        low, high = 0.0, drive["speed"]
        if high * self.ramp(high)[0] <= way:
            low = high
        for _ in range(100 if low < high else 0):
            middle = (low + high) / 2
            low, high = (middle, high) if middle * self.ramp(middle)[0] <= way else (low, middle)
        self.fastest = low
        self.ramp_s, up = self.ramp(low)
        steady = max(0.0, way / low - self.ramp_s)
        self.pieces = up + [(steady, 0.0, 0.0)] + [(lasts, -accel, -jerk) for lasts, accel, jerk in up]
        self.end = steady + 2 * self.ramp_s

    def ramp(self, speed):
        accel, jerk = self.drive["accel"], self.drive["jerk"]
        if jerk is None:
            return speed / accel, [(speed / accel, accel, 0.0)]
        turn = min(accel / jerk, math.sqrt(speed / jerk))
        most = turn * jerk
        hold = max(0.0, speed / most - turn) if most > 0 else 0.0
        return 2 * turn + hold, [(turn, 0.0, jerk), (hold, most, 0.0), (turn, most, -jerk)]

    def moved(self, time):
        """(way gone, speed)"""
        way, speed, left = 0.0, 0.0, max(0.0, time)
        for lasts, accel, jerk in self.pieces:
            t = min(left, lasts)
            way += t * (speed + t * (accel / 2 + t * jerk / 6))
            speed += t * (accel + t * jerk / 2)
            left -= t
            if left <= 0:
                return way, max(0.0, speed)
        return way, 0.0

    def fastest_between(self, start, end):
        if end >= self.ramp_s and start <= self.end - self.ramp_s:
            return self.fastest
        return max(self.moved(start)[1], self.moved(end)[1])

    def stopped(self, ran, after):
        """(way still to go, speed) so long after the stop command to a closing that had run for `ran`."""
        delay, decel = self.drive["delay"], self.drive["decel"]
        if ran == math.inf or after <= delay:
            way, speed = self.moved(after if ran == math.inf else ran + after)
            return self.way - way, speed
        way, speed = self.moved(ran + delay)
        t = min(after - delay, speed / decel)
        left = self.way - way - t * (speed - t * decel / 2)
        return (left, speed - t * decel) if left > 0 else (0.0, 0.0)


# --------------------------------------------------------------------------------------------------------------------- windows and trees

# A change of an output: seen from `start` on, which takes `response`, and until `end`, after which it holds.


def on_at(change, slowness):
    return change[0] * slowness + change[2]


def off_at(change, slowness):
    return change[1] * slowness + change[3]


def lasts(stretch, response, slowness):
    return (stretch[1] - stretch[0]) * slowness >= response


class Way:
    """One body on one straight way past one closing. `views`: of each field (stretches, response, hold)."""

    def __init__(self, v, closing, enter, leave, clear, views, cycle):
        self.v, self.closing, self.enter, self.leave, self.clear, self.views, self.cycle = v, closing, enter, leave, clear, views, cycle
        self.has_room = not clear > closing.way + SPARE_MM

    def check(self, parts, slow, place, budget):
        if self.has_room and not self.stands_seen():
            raise self.v.Refused(place, "a body that is seen wherever it stands in the way of the leaf", "a place at which it is not")
        start = slow[0]
        for i, part in enumerate(self.listed(parts, place)):
            to = part.get("to") if isinstance(part, dict) else None
            if not self.v.is_number(to) or not start <= to <= slow[1]:
                raise self.v.Refused(f"{place}/{i}/to", f"a slowness from {start:g} up to {slow[1]:g}", self.v.shown(to))
            windows = self.windows(start, to)
            trees = self.listed(part.get("trees"), f"{place}/{i}/trees")
            if len(trees) != len(windows):
                raise self.v.Refused(f"{place}/{i}/trees", f"{len(windows)} trees", f"{len(trees)}")
            for k, (window, tree) in enumerate(zip(windows, trees)):
                first = min(self.enters(window, start), self.enters(window, to))
                box = (start, to, 0.0, max(0.0, self.closing.end - first))
                self.check_tree(window, box, self.listed(tree, f"{place}/{i}/trees/{k}"), f"{place}/{i}/trees/{k}", budget)
            start = to
        if start != slow[1]:
            raise self.v.Refused(place, f"parts up to {slow[1]:g}", f"{start:g}")

    def listed(self, value, place):
        if not isinstance(value, list) or len(value) > 1_000_000:
            raise self.v.Refused(place, "a list", self.v.shown(value))
        return value

    def stands_seen(self):
        seen = self.enter
        for start, end in sorted(stretch for stretches, _, _ in self.views for stretch in stretches):
            if start <= seen:
                seen = max(seen, end)
        return seen >= self.leave

    def windows(self, start, to):
        """(the change that stops it or None, those that must have gone off, in the plane from, to)"""

        def in_order(changes):
            return sorted(changes, key=lambda change: on_at(change, start))

        going = in_order([change for view in self.views for change in self.changes(view, start, to)])
        found = [(stop, going[:k], self.enter, self.leave) for k, stop in enumerate(going + [None])]
        if not self.has_room:
            return found
        lasting = [(*each, r, h) for stretches, r, h in self.views for each in stretches if lasts(each, r, start)]
        for stretches, response, hold in self.views:
            for each in stretches:
                if not (each[0] < self.leave and each[1] > self.enter):
                    continue
                own = (*each, response, hold)
                before = in_order([c for c in lasting if c[0] <= own[0] and c != own and on_at(c, start) <= on_at(own, start)])
                found += [(stop, before[:k], max(self.enter, own[0]), math.inf) for k, stop in enumerate(before + [own])]
        return found

    @staticmethod
    def changes(view, start, to):
        stretches, response, hold = view
        found = []
        for each in stretches:
            gap = each[0] - found[-1][1] if found else math.inf
            if found and gap * start <= hold and gap * to <= hold:
                found[-1] = (found[-1][0], each[1], response, hold)
            elif lasts(each, response, start):
                found.append((*each, response, hold))
        return found

    @staticmethod
    def enters(window, slowness):
        stop, _, enter, leave = window
        return (enter - leave) * slowness if stop is None else (enter - stop[0]) * slowness - stop[2]

    @staticmethod
    def leaves(window, slowness):
        stop, _, _, leave = window
        if stop is None:
            return 0.0
        return math.inf if leave == math.inf else (leave - stop[0]) * slowness - stop[2]

    def check_tree(self, window, root, tree, place, budget):
        waiting = [(root, 0)]
        for i, node in enumerate(tree):
            if not waiting or type(node) is not int or not -2 <= node <= 0:
                raise self.v.Refused(f"{place}/{i}", "0, -1 or -2, as many as the tree has", self.v.shown(node))
            (s0, s1, r0, r1), depth = waiting.pop()
            budget.spend(1)
            if node == 0:
                if not self.is_shown(window, s0, s1, r0, r1):
                    raise self.v.Refused(f"{place}/{i}", "a leaf that strikes nobody", f"slowness {s0:g} to {s1:g}, closing for {r0:g} to {r1:g} s")
                continue
            if depth >= MOST_SPLITS:
                raise self.v.Refused(f"{place}/{i}", f"at most {MOST_SPLITS} nested splits", "more")
            slow, ran = (s0 + s1) / 2, (r0 + r1) / 2
            halves = ((s0, slow, r0, r1), (slow, s1, r0, r1)) if node == -1 else ((s0, s1, r0, ran), (s0, s1, ran, r1))
            waiting += [(halves[1], depth + 1), (halves[0], depth + 1)]
        if waiting:
            raise self.v.Refused(place, "a whole tree", f"an end with {len(waiting)} boxes missing")

    def is_shown(self, window, s0, s1, r0, r1):
        stop, offs, _, leave = window
        closing, delay, decel = self.closing, self.closing.drive["delay"], self.closing.drive["decel"]
        for off in offs:
            wait = wait_after(self.cycle, min(off_at(off, s) - on_at(off, s) for s in (s0, s1)) - SPARE_S)
            if all((leave * s if stop is None else on_at(stop, s)) - off_at(off, s) - wait < r0 - SPARE_S for s in (s0, s1)):
                return True  # no such closing
        entering = [self.enters(window, s) for s in (s0, s1)]
        if r0 + min(entering) > closing.end + SPARE_S:
            return True  # shut
        if self.clear > closing.way + SPARE_MM and r1 + max(entering) < -SPARE_S:
            return True  # met before
        if stop is not None and min(entering) > delay + closing.fastest_between(r0 + delay, r1 + delay) / decel + SPARE_S:
            return True  # at rest
        last = max(self.leaves(window, s) for s in (s0, s1))
        left = closing.way - closing.moved(r1 + last)[0] if stop is None else closing.stopped(r1, last)[0]
        return left > self.clear + SPARE_MM  # high enough


def wait_after(cycle, lasted):
    warning, cancels, pause = cycle
    if cancels:
        return warning + (pause or 0.0)
    return warning + pause if pause is not None and lasted >= warning else 0.0


# ------------------------------------------------------------------------------------------------------------------------------- passages


def check_passage(lanes, claim, place):
    """In this lane and state no body is struck."""
    v, door = lanes.v, lanes.door
    lane = lanes.lane(claim.get("lane"), f"{place}/lane")
    state = state_of(lanes, claim, place)
    for name in ("partSights", "falls"):
        if claim.get(name):
            lanes.cannot(f"{place}/{name}", "nothing", "entries")
    known = lanes.fields()
    names = claim.get("fields")
    if not isinstance(names, list) or not all(isinstance(name, str) and name in known for name in names) or len(set(names)) < len(names):
        raise v.Refused(f"{place}/fields", "fields of the door, each once", v.shown(names))
    fields = [known[name] for name in names]
    for name, (_, field) in zip(names, fields):
        if not lane.holds(field) or field.times is None or field.by_leaf:
            raise v.Refused(f"{place}/fields", "presence fields that can be counted on", name)
    far = claim.get("far_mm")
    if not v.is_number(far) or not 0 <= far <= FARTHEST:
        raise v.Refused(f"{place}/far_mm", f"a number up to {FARTHEST}", v.shown(far))
    sights = claim.get("sights")
    if not isinstance(sights, list) or len(sights) != len(fields):
        raise v.Refused(f"{place}/sights", f"a list for each of {len(fields)} fields", v.shown(sights))
    seen_by = [Seeing(lanes, state, field, sights[f], f"{place}/sights/{f}") for f, field in enumerate(fields)]
    expected = [(body, i, posture, x) for body, i, posture in lane.postures() for x in lane.places(half_of(v, posture)[0])]
    stands = claim.get("stands")
    if not isinstance(stands, list) or len(stands) != len(expected):
        raise v.Refused(f"{place}/stands", f"{len(expected)} stands", v.shown(stands))
    ways = 0
    for k, (stand, (body, i, posture, x)) in enumerate(zip(stands, expected)):
        at = f"{place}/stands/{k}"
        if not isinstance(stand, dict) or (stand.get("body"), stand.get("posture")) != (body.id, i) or "beside" in stand:
            raise v.Refused(at, f"{body.id}, posture {i}, alone", v.shown(stand))
        if posture.yaw_from != posture.yaw_to:
            lanes.cannot(at, "one yaw", "a range")
        trees = stand.get("seen")
        if not isinstance(trees, list) or len(trees) != len(fields):
            raise v.Refused(f"{at}/seen", f"trees of {len(fields)} fields", v.shown(trees))
        visible = [seeing.stretches(body, posture, x, far, trees[f], f"{at}/seen/{f}") for f, seeing in enumerate(seen_by)]
        ways += check_closings(lanes, lane, state, posture, x, fields, visible, stand.get("closings"), f"{at}/closings")
    return {"lane": lane.id, "state": state.id, "ways": ways}


def check_closings(lanes, lane, state, posture, x, fields, visible, closings, place):
    v = lanes.v
    whole, clear = lanes.whole(state.floor), lanes.clear(state.floor, posture, x)
    reach = lanes.half + half_of(v, posture)[1]
    openings = [whole] + [each for each in lanes.partial if each < whole]
    expected = [(side, opening) for side in lane.sides for opening in openings]
    if not isinstance(closings, list) or len(closings) != len(expected):
        raise v.Refused(place, f"{len(expected)} closings", v.shown(closings))
    for i, (given, (side, opening)) in enumerate(zip(closings, expected)):
        written = given.get("opening_mm") if isinstance(given, dict) else None
        if not v.is_number(written) or given.get("from") != side or abs(written - opening) > 1e-6:
            raise v.Refused(f"{place}/{i}", f"from side {side}, opening {opening:g}", v.shown(given))
        views = []
        for stretches, (_, field) in zip(visible, fields):
            turned = stretches if side == "b" else [(-y1, -y0) for y0, y1 in reversed(stretches)]
            views.append((turned, *field.times))
        if not opening > 0:
            raise v.Refused(f"{place}/{i}", "an opening from which a leaf can close", f"{opening:g}")
        way = Way(v, Closing(opening, lanes.drive), -reach, reach, clear, views, lanes.cycle)
        way.check(given.get("parts"), (1 / lane.fastest, 1 / lane.slowest), f"{place}/{i}/parts", lanes.budget)
    return len(expected)


def state_of(lanes, claim, place):
    found = next((state for state in lanes.door.states if state.id == claim.get("state")), None)
    if found is None:
        raise lanes.v.Refused(f"{place}/state", "the id of a state of the door", lanes.v.shown(claim.get("state")))
    return found


class Seeing:
    """Where along y one field sees a body, by trees over tiles without width; with the rules of a coverage as the door is written."""

    def __init__(self, lanes, state, field, sights, place):
        v = self.v = lanes.v
        self.coverage = as_coverage(lanes, state, [field], place)
        self.coverage.claim = {"sights": sights}
        self.coverage.read_sights()

    def stretches(self, body, posture, x, far, trees, place):
        v, coverage = self.v, self.coverage
        zone = v.Zone("way", "", "presence", x, x, -far, far, [], None)
        roots = v.roots_of(zone, coverage.state.floor)
        if not isinstance(trees, list) or len(trees) != len(roots):
            raise v.Refused(place, f"{len(roots)} trees", v.shown(trees))
        slice = v.slice_of(body, posture, 0, 1)
        found = []
        for r, (root, tree) in enumerate(zip(roots, trees)):
            piece = v.floor_affine(coverage.state.floor, (root[2] + root[3]) / 2)
            checks = {}

            def check(node, tile):
                if node < 0:
                    return "a sight, or nothing", f"{node}"
                wrong = coverage.check_leaf(node, tile, slice, piece, checks)
                if wrong is None:
                    if found and tile[2] <= found[-1][1]:
                        found[-1] = (found[-1][0], tile[3])
                    else:
                        found.append((tile[2], tile[3]))
                return wrong

            try:
                coverage.walk(tree, root, check, set(), f"{place}/{r}")
            except v.TooMany:
                break
        if coverage.issues:  # a leaf that is not true goes there
            first = coverage.issues[0]
            raise v.Refused(first["place"], first["expected"], first["got"])
        return found


def as_coverage(lanes, state, fields, place):
    """What the rules for tiles and placements ask of a coverage."""
    coverage = lanes.v.Coverage(lanes.door, {}, place, lanes.budget)
    coverage.state, coverage.tolerances, coverage.fields, coverage.obstacles = state, None, fields, []
    coverage.surroundings = coverage.as_written = lanes.v.Surroundings(lanes.door, state, None)
    coverage.floor_mm, coverage.range_left = 0.0, 1.0
    return coverage


# ------------------------------------------------------------------------------------------------------------------------------- contacts


def check_contact(lanes, claim, place):
    """In this lane and state a body is struck, in one case that is stepped again."""
    v = lanes.v
    lane = lanes.lane(claim.get("lane"), f"{place}/lane")
    state = state_of(lanes, claim, place)
    for name in ("lying", "beside", "met"):
        if name in claim:
            lanes.cannot(f"{place}/{name}", "nothing", v.shown(claim[name]))
    posture, body = next(((p, b) for b, i, p in lane.postures() if (b.id, i) == (claim.get("body"), claim.get("posture"))), (None, None))
    if posture is None:
        raise v.Refused(f"{place}/posture", "a posture of a body of the lane", v.shown([claim.get("body"), claim.get("posture")]))

    def number(name, least=-math.inf, most=math.inf):
        value = claim.get(name)
        if not v.is_number(value) or not least <= value <= most:
            raise v.Refused(f"{place}/{name}", f"a number from {least:g} up to {most:g}", v.shown(value))
        return float(value)

    yaw = number("yaw_deg", posture.yaw_from - 1e-9, posture.yaw_to + 1e-9)
    posture = posture._replace(yaw_from=yaw, yaw_to=yaw)
    side = claim.get("from")
    if side not in lane.sides:
        raise v.Refused(f"{place}/from", "a side of the lane", v.shown(side))
    half_x, half_y = half_of(v, posture)
    middle = sum(lane.x) / 2
    x = number("x_mm", min(lane.x[0] + half_x, middle) - 1e-6, max(lane.x[1] - half_x, middle) + 1e-6)
    opening = number("opening_mm")
    if not any(abs(each - opening) < 1e-6 for each in [lanes.whole(state.floor)] + lanes.partial):
        raise v.Refused(f"{place}/opening_mm", "an opening from which the leaf closes", f"{opening:g}")
    if not opening > 0:
        raise v.Refused(f"{place}/opening_mm", "an opening from which a leaf can close", f"{opening:g}")
    pace = number("pace_mm_per_s", 0, lane.fastest * (1 + 1e-9))
    reach = lanes.half + half_y
    stands = math.inf if claim.get("standsAt_mm", 0) is None else number("standsAt_mm", -reach, reach)
    if (pace == 0 and stands == math.inf) or 0 < pace < lane.slowest * (1 - 1e-9):
        raise v.Refused(f"{place}/pace_mm_per_s", f"a pace from {lane.slowest:g}, or a place to stand", f"{pace:g}")
    begins, contact = number("begins_s"), number("contact_s", 0)
    closing = Closing(opening, lanes.drive)
    slack = 2 * STEP / pace if pace > 0 else 1e-6
    watching = Watching(lanes, state, body, posture, x, place)
    fields = [(sensor, field) for sensor, field in lanes.fields().values() if field.function == "presence"]
    for sensor, field in fields:
        if field.times is None:
            lanes.cannot(place, "presence fields with known times", f"{sensor.id}/{field.id}")
    ran, going = math.inf, False
    if pace == 0:
        # it stands there from the first: no field that holds it may see it
        for sensor, field in fields:
            if lane.holds(field) and watching.sees(sensor, field, stands if side == "b" else -stands):
                raise v.Refused(place, "a body that no field sees where it stands", f"{sensor.id}/{field.id}")
    else:
        went = (begins + contact) * pace
        at = min(stands, went)
        going = went < stands
        if abs(at) > reach + STEP:
            raise v.Refused(f"{place}/contact_s", "a body in the leaf's plane", f"its middle {at:g} mm along its way")
        far = min(LARGEST_FAR, max([0.0] + [reach_across(sensor, field) for sensor, field in fields]) + 2000)
        for sensor, field in fields:
            seen = stepped(far, min(stands, at + STEP), lambda p: watching.sees(sensor, field, p if side == "b" else -p))
            if stands <= at + STEP and watching.sees(sensor, field, stands if side == "b" else -stands):
                first = seen.pop()[0] if seen and seen[-1][1] >= stands - STEP else stands
                seen.append((first, math.inf))
            for on, off in spans(seen, pace, *field.times):
                if forbids(lanes.cycle, on, off, begins, slack):
                    raise v.Refused(f"{place}/begins_s", "an instant at which no output, and no time after it, forbids closing", f"{sensor.id}/{field.id} does")
                if on >= begins - slack:
                    ran = min(ran, max(0.0, on - begins))

    def leaf_at(time):
        return closing.stopped(ran, time) if ran == math.inf or time <= ran else closing.stopped(ran, time - ran)

    if ran != math.inf and contact <= ran:
        ran_left = closing.way - closing.moved(contact)[0]
    else:
        ran_left = leaf_at(contact)[0]
    clear = lanes.clear(state.floor, posture, x)
    if ran_left > clear + 1e-3 + slack * closing.fastest:
        raise v.Refused(place, f"a leaf at most {clear:g} mm from shut", f"{ran_left:g}")
    speeds = []
    for time in (contact - slack, contact, contact + slack):
        speeds.append(closing.moved(max(0.0, time))[1] if time <= ran else leaf_at(time)[1])
    if contact > slack and not max(speeds) > 0:
        raise v.Refused(f"{place}/contact_s", "a leaf that still closes", "at rest")
    body_speed = pace if going else 0.0
    least, most = (math.sqrt(body_speed**2 + speed**2) for speed in (min(speeds), max(speeds)))
    claimed = number("relative_mm_per_s", 0)
    if not least - SPEED_OFF <= claimed <= most + SPEED_OFF:
        raise v.Refused(f"{place}/relative_mm_per_s", f"{least:.1f} to {most:.1f}", f"{claimed:g}")
    return {"lane": lane.id, "state": state.id, "body": body.id, "relative_mm_per_s": least}


class Watching:
    """Whether a field sees the body at places of its way, by the rules of a single placement. A tie counts as seen: it might stop the leaf."""

    def __init__(self, lanes, state, body, posture, x, place):
        v = self.v = lanes.v
        self.coverage = as_coverage(lanes, state, [], place)
        slice = v.slice_of(body, posture, 0, 1)
        self.case = v.WorstCase(self.coverage, {}, place, [slice])
        self.case.slice, self.case.x, self.case.yaw = slice, x, posture.yaw_from

    def sees(self, sensor, field, y):
        case, state = self.case, self.coverage.state
        case.y = y
        case.floor_z = self.v.profile_at(state.floor, y) + state.floor.slope_x * case.x
        for plane in field.planes:
            neighbours = 0
            self.coverage.budget.spend(2 * len(sensor.planes[plane]))
            for beam in sensor.planes[plane]:
                neighbours = 0 if case.rules_failed(sensor, field, beam)[1] else neighbours + 1
                if neighbours >= field.cluster:
                    return True
        return False


def reach_across(sensor, field):
    """How far from y = 0 a point can lie that counts for a field."""
    starts = [abs(beam.origin[1] + (beam.length or 0.0) * beam.direction[1] * k) for plane in sensor.planes for beam in plane for k in (0, 1)]
    reach = max([0.0] + starts) + (sensor.max_range if sensor.kind == "ranging" else 0.0)
    return min(reach, max(abs(field.y_min), abs(field.y_max)))


def stepped(far, last, sees):
    found, before, place = [], False, -far
    while place <= last:
        now = sees(place)
        if now and before:
            found[-1] = (found[-1][0], place)
        elif now:
            found.append((place, place))
        before = now
        place += STEP
    return found


def spans(seen, pace, response, hold):
    found = []
    for start, end in seen:
        on, off = start / pace, end / pace
        if found and on <= found[-1][1]:
            found[-1] = (found[-1][0], off + hold)
        elif off - on >= response:
            found.append((on + response, off + hold))
    return found


def forbids(cycle, on, off, time, slack):
    warning, cancels, pause = cycle

    def within(start, end):
        return start + slack < time < end - slack

    if within(on, off):
        return True
    if cancels:
        return within(on, off + warning + (pause or 0.0))
    return pause is not None and within(on + warning, off + warning + pause)
