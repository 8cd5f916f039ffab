"""Every limit, typed anew with its source, and what is known of a person without asking the rails.

Nothing here is imported from the service. The sources are those that the table of rules names; a limit marked judgement
has none. Energies in kcal/d, masses in kg, fractions 0 to 1.
"""

from typing import Any, NamedTuple

from .service import ask

Json = dict[str, Any]

ADULT, OLDER = 18, 65  # y; guidelines on deficits (Jensen MD, et al. Circulation 2014;129:S102-38, and judgement)
UNDERWEIGHT, NEAR_UNDERWEIGHT = 18.5, 20.0  # kg/m2; WHO Technical Report 894, 2000; the warning is judgement
PAST_MENOPAUSE = 60.0  # years; the last period is at 51 in the median, past 60 in hardly anybody (from memory)
REFEEDING_BMI = 16.0  # kg/m2; NICE CG32 1.4.6 has it as one sign of high risk of refeeding problems (from memory)
LEAST_FAT = {"male": 0.06, "female": 0.14, "unspecified": 0.14}  # judgement
LOW_FAT = {"male": 0.08, "female": 0.18, "unspecified": 0.18}  # judgement
DEFICIT_SHARE, DEFICIT_SHARE_WARN = 0.30, 0.25  # judgement
FAT_SUPPLY = 290.0 / 4.184  # kcal per kg fat mass; Alpert SS. J Theor Biol 2005;233:1-13
FAT_SUPPLY_WARN = 203.0 / 4.184  # its author's later figure as the trade hands it down; never published
LOSS, LOSS_WARN = 0.010, 0.008  # of body mass a week; Helms ER. JISSN 2014;11:20, Garthe I. IJSNEM 2011;21:97-104
LOGGED_LOSS, LOGGED_LOSS_WARN = 0.015, 0.010  # of body mass a week; judgement; Helms 2014
AVAILABILITY, AVAILABILITY_LONG = 25.0, 30.0  # kcal/kg fat-free mass; Mountjoy M. BJSM 2023;57:1073, Loucks AB 2003
FADE = {"male": (0.18, 0.25), "female": (0.27, 0.35), "unspecified": (0.27, 0.35)}  # judgement
FLOOR = {"male": 1500, "female": 1200, "unspecified": 1500}  # Jensen 2014
FLOOR_TOLD = {"male": 1200, "female": 1000, "unspecified": 1000}  # judgement: on the figure as told
RESTING_TOLD = 0.8  # of resting energy, on the figure as told; judgement
PROTEIN = 1.6  # g/kg; Morton RW. Br J Sports Med 2018;52:376-84
DIETARY_FAT, DIETARY_FAT_SHARE, DIETARY_FAT_SHARE_WARN = 0.5, 0.15, 0.20  # g/kg, of energy; Iraki 2019, IOM 2005
CARBOHYDRATE_WARN = 130  # g; IOM 2005
GAIN = {"untrained": 0.005, "novice": 0.005, "intermediate": 0.0025, "advanced": 0.0015}  # a week; Iraki J 2019
DEFAULT_DEFICIT = 500  # common practice, no published source
SHORT_WEEKS, APART_WEEKS = 6, 4  # judgement
NEED_SHARE, LEAST_RATIO = 0.90, 0.8  # of physical maintenance for those who may not diet; judgement
BREASTFEEDING = 400  # kcal/d, months 0-6: 540 less 140; National Academies 2023, 10.17226/26818
STEP = 200  # kcal/d, the largest step of a review; judgement
BELIEVED, ASKED_ABOUT, REFUSED_OVER = 1.1, 2.5, 5.0  # times resting; Thurber C. Sci Adv 2019;5:eaaw0341, judgement
MUSCULAR = {"male": 27.0, "female": 23.0, "unspecified": 27.0}  # kg/m2 of fat-free mass; judgement
NO_BODY = 36.0  # kg/m2 of fat-free mass; judgement
# What a kilogram costs at rest: Hall KD, et al. Lancet 2011;378:826-37, 13 and 92 kJ/kg/d.
FAT_ENERGY = 9440.0  # kcal/kg of fat mass, 39.5 MJ/kg; Hall KD. Int J Obes 2008;32:573-6
FAT_UPKEEP, LEAN_UPKEEP = 13 / 4.184, 92 / 4.184
# A level implies exercise, a share of resting energy: what the middle of its band has over walking and seated work (PAL
# 1.70), nine tenths of it past digestion. Where an answer tells its own figure, no less than the band's lower end has.
IMPLIED_EXERCISE = {"sedentary": 0.0, "light": 0.0, "moderate": 0.07, "active": 0.20, "very_active": 0.45}
LEAST_EXERCISE = {"sedentary": 0.0, "light": 0.0, "moderate": 0.0, "active": 0.13, "very_active": 0.27}


class Person(NamedTuple):
    """What the rails read of a request: the person, and what the equations alone say of them."""

    sex: str
    age: float
    height_m: float
    weight: float
    status: str
    screening: Json | None
    is_measured: bool
    fraction: float
    half_width: float  # of the reading's interval, below
    resting: float
    prior: float
    exercise: float

    @property
    def bmi(self) -> float:
        """Body mass index by the weight given."""
        return self.weight / self.height_m**2

    @property
    def is_adult(self) -> bool:
        """Whether limits of the body mass index are those of adults."""
        return self.age >= ADULT

    @property
    def is_cleared(self) -> bool:
        """Whether a professional's clearance in words was given."""
        clearance = (self.screening or {}).get("clinical_clearance")
        return clearance is not None and all(
            sum(letter.isalpha() for letter in clearance[key]) >= 2 for key in ("given_by", "reason")
        )

    @property
    def has_eating_disorder(self) -> bool:
        """Now or before."""
        return (self.screening or {}).get("eating_disorder") in ("current", "past")

    @property
    def may_hear_of_leanness(self) -> bool:
        """False for minors and with an eating disorder: no body-fat target and no leanness."""
        return self.age >= ADULT and not self.has_eating_disorder

    @property
    def may_diet_never(self) -> bool:
        """Those whose intake may not be lowered: minors, pregnancy, breastfeeding, eating disorder, unscreened."""
        s = self.screening
        return self.age < ADULT or s is None or s["is_pregnant"] or s["is_breastfeeding"] or self.has_eating_disorder

    def refusals(self) -> set[str]:
        """Codes of every refusal of a deficit that this person must be told."""
        found = set()
        s = self.screening
        if self.age < ADULT:
            found.add("REFUSED_UNDER_AGE")
        if self.bmi < UNDERWEIGHT:
            found.add("REFUSED_BMI")
        if self.fraction <= LEAST_FAT[self.sex]:
            found.add("REFUSED_BODY_FAT")
        if s is None:
            return found | {"REFUSED_UNANSWERED"}
        if s["is_pregnant"]:
            found.add("REFUSED_PREGNANCY")
        if s["is_breastfeeding"]:
            found.add("REFUSED_BREASTFEEDING")
        if self.has_eating_disorder:
            found.add("REFUSED_EATING_DISORDER")
        if (s["conditions"] or s["medicines"]) and not self.is_cleared:
            found.add("REFUSED_MEDICAL")
        if self.age >= OLDER and not self.is_cleared:
            found.add("REFUSED_OLDER_WITHOUT_CLEARANCE")
        return found

    def need(self, physical: float) -> float:
        """Least that someone who may not diet is expected to eat; ``physical``: the posterior mean, 0 where unknown."""
        s = self.screening or {}
        share = 1.0 if s.get("is_pregnant") else NEED_SHARE
        return share * (max(self.prior, physical) + (BREASTFEEDING if s.get("is_breastfeeding") else 0))

    def fading(self, fraction: float) -> float:
        """What is left of the limits on energy availability at a body fat, by the lower end of a measured one."""
        if not self.is_measured:
            return 1.0
        first, last = FADE[self.sex]
        return min(1.0, max(0.0, (last - (fraction - self.half_width)) / (last - first)))


def person_of(request: Json) -> Person | None:
    """The person of a request; None where even the equations are refused for them."""
    profile = request["profile"]
    answered = ask("estimate_maintenance", {"profile": profile})
    if not answered.is_answer:
        return None
    body = answered.body
    fat, resting = body["body_fat_fraction"], body["resting_kcal"]["mean"]
    reading = profile.get("body_fat")
    return Person(
        sex=profile["sex"],
        age=profile["age_years"],
        height_m=profile["height_cm"] / 100,
        weight=profile["weight_kg"],
        status=profile["training"]["status"],
        screening=request.get("screening"),
        is_measured=reading is not None and reading["method"] != "bmi_equation",
        fraction=fat["mean"],
        half_width=fat["mean"] - fat["lower"],
        resting=resting,
        prior=body["contribution"]["prior_kcal"]["mean"],
        exercise=exercise(profile, resting),
    )


def exercise(profile: Json, resting: float, told: float | None = None) -> float:
    """Net energy of training: (MET - 1) x own resting rate; of a level what it or its lifting implies."""
    activity = profile["activity"]
    if activity["kind"] == "week":
        return bouts_kcal(activity.get("sessions", []), resting)
    lifting = {"met": 5.0, "minutes": 60.0, "times_per_week": profile["training"]["resistance_sessions_per_week"]}
    least = bouts_kcal([lifting], resting)
    if told is not None:
        return max(told, least, LEAST_EXERCISE[activity["level"]] * resting)
    return max(least, IMPLIED_EXERCISE[activity["level"]] * resting)


def bouts_kcal(bouts: list[Json], resting: float) -> float:
    """Net energy of bouts, mean a day."""
    return sum((b["met"] - 1) * resting / 24 * b["minutes"] / 60 * b["times_per_week"] / 7 for b in bouts)


class Ratio(NamedTuple):
    """Logged over eaten energy; ``is_told``: whether the answer says it."""

    mean: float
    upper: float
    is_told: bool

    @property
    def protective(self) -> float:
        """What the limits that protect divide by: the upper end, at most 1."""
        return min(1.0, self.upper)


def ratio_of(request: Json, answer: Json) -> Ratio:
    """The logging ratio of an answer; as the trend has it where the answer does not tell, 1 without logged intakes.

    Of an estimate of maintenance the two scales are telling enough. A maintenance that the caller knows has no ratio.
    """
    told = answer.get("logging_ratio") or answer.get("start", {}).get("logging_ratio")
    if told:
        return Ratio(told["mean"], told["upper"], True)
    if not (request.get("log") or {}).get("intakes") or (request.get("maintenance")):
        return Ratio(1.0, 1.0, True)
    asked = {"profile": request["profile"], "log": request["log"]}
    if request.get("as_of_date") and "phase" in request:
        asked["as_of_date"] = request["as_of_date"]
    read = ask("read_trend", asked)
    found = read.body.get("logging_ratio") or {"mean": 1.0, "upper": 1.0}
    physical = answer.get("physical_maintenance_kcal")
    mean = answer["maintenance_kcal"]["mean"] / physical["mean"] if physical else found["mean"]
    return Ratio(mean, max(mean, found["upper"]), bool(physical) and "contribution" in answer)
