"""Generated from the contract by regenerate.py: do not edit."""

from typing import Any

REQUEST_SCHEMAS: dict[str, Any] = {
    "AccountAsRead": {
        "additionalProperties": False,
        "properties": {
            "log_odds": {"maximum": 1000, "minimum": -1000, "type": "number"},
            "mean": {
                "items": {
                    "maximum": 1000000.0,
                    "minimum": -1000000.0,
                    "type": "number",
                },
                "maxItems": 10,
                "minItems": 8,
                "type": "array",
            },
            "noise": {"exclusiveMinimum": 0, "maximum": 1000, "type": "number"},
            "noise_weighings": {
                "exclusiveMinimum": 0,
                "maximum": 10000,
                "type": "number",
            },
            "spread": {
                "items": {
                    "maximum": 1000000000.0,
                    "minimum": -1000000000.0,
                    "type": "number",
                },
                "maxItems": 55,
                "minItems": 36,
                "type": "array",
            },
            "water_days_ago": {"maximum": 1000, "minimum": 0, "type": "number"},
            "water_side": {"maximum": 1, "minimum": -1, "type": "number"},
        },
        "required": ["log_odds", "mean", "spread"],
        "type": "object",
    },
    "ActivityByLevel": {
        "additionalProperties": False,
        "properties": {
            "kind": {"const": "level", "type": "string"},
            "level": {"$ref": "ActivityLevel"},
        },
        "required": ["kind", "level"],
        "type": "object",
    },
    "ActivityByWeek": {
        "additionalProperties": False,
        "properties": {
            "kind": {"const": "week", "type": "string"},
            "sessions": {
                "items": {"$ref": "TrainingSession"},
                "maxItems": 30,
                "type": "array",
            },
            "steps_per_day": {"maximum": 60000, "minimum": 0, "type": "number"},
        },
        "required": ["kind", "steps_per_day"],
        "type": "object",
    },
    "ActivityLevel": {
        "enum": ["active", "light", "moderate", "sedentary", "very_active"],
        "type": "string",
    },
    "AdherenceFigure": {
        "additionalProperties": False,
        "properties": {
            "mean": {"maximum": 1.5, "minimum": 0.2, "type": "number"},
            "standard_deviation": {"maximum": 1, "minimum": 0.01, "type": "number"},
            "weeks": {"maximum": 520, "minimum": 0, "type": "number"},
        },
        "required": ["mean", "standard_deviation", "weeks"],
        "type": "object",
    },
    "Aim": {"enum": ["gain", "hold", "lose"], "type": "string"},
    "Attention": {
        "additionalProperties": False,
        "properties": {
            "action": {"$ref": "Said"},
            "as_of_date": {"format": "date", "type": "string"},
            "change_kcal": {"maximum": 15000, "minimum": -15000, "type": "number"},
            "last_entry_date": {
                "anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]
            },
            "level": {"maximum": 3, "minimum": 0, "type": "integer"},
            "reason": {"$ref": "Said"},
            "since_date": {"format": "date", "type": "string"},
            "verdict": {"maxLength": 40, "type": "string"},
        },
        "required": [
            "level",
            "reason",
            "action",
            "verdict",
            "since_date",
            "as_of_date",
        ],
        "type": "object",
    },
    "BatchLine": {
        "additionalProperties": False,
        "properties": {
            "body": {
                "anyOf": [
                    {"$ref": "BodyCompositionRequest"},
                    {"$ref": "MaintenanceRequest"},
                    {"$ref": "DecisionRequest"},
                    {"$ref": "ForecastRequest"},
                    {"$ref": "PlanRequest"},
                    {"$ref": "TrendRequest"},
                    {"$ref": "ReviewRequest"},
                ]
            },
            "operation": {"$ref": "BatchOperation"},
            "reference": {"maxLength": 200, "minLength": 1, "type": "string"},
        },
        "required": ["reference", "operation", "body"],
        "type": "object",
    },
    "BatchOperation": {
        "enum": [
            "decide_phase",
            "estimate_body_composition",
            "estimate_maintenance",
            "forecast_intake",
            "plan_phases",
            "read_trend",
            "review_phase",
        ],
        "type": "string",
    },
    "BlockedDates": {
        "additionalProperties": False,
        "properties": {
            "first_date": {"format": "date", "type": "string"},
            "last_date": {"format": "date", "type": "string"},
        },
        "required": ["first_date", "last_date"],
        "type": "object",
    },
    "BmiMeasurement": {
        "additionalProperties": False,
        "properties": {"kind": {"const": "bmi", "type": "string"}},
        "required": ["kind"],
        "type": "object",
    },
    "BodyAsRead": {
        "additionalProperties": False,
        "properties": {
            "adaptation_gain": {"maximum": 3, "minimum": -1, "type": "number"},
            "carried_per_kcal": {"maximum": 0.01, "minimum": 0.0001, "type": "number"},
            "expenditure_slope_kcal_per_kg_day": {
                "maximum": 500,
                "minimum": 0,
                "type": "number",
            },
            "growth_kg_per_day": {"maximum": 0.05, "minimum": -0.05, "type": "number"},
            "growth_sd": {"maximum": 0.05, "minimum": -0.05, "type": "number"},
            "is_usual_known": {"type": "boolean"},
            "prior_kcal": {"exclusiveMinimum": 100, "maximum": 30000, "type": "number"},
            "prior_sd_kcal": {
                "exclusiveMinimum": 0,
                "maximum": 15000,
                "type": "number",
            },
            "rho_kcal_per_kg": {"maximum": 14000, "minimum": 2000, "type": "number"},
            "rho_sd": {"maximum": 6000, "minimum": 0, "type": "number"},
            "settled_kg": {
                "anyOf": [
                    {"maximum": 500, "minimum": 20, "type": "number"},
                    {"type": "null"},
                ]
            },
            "usual_kcal": {"maximum": 25000, "minimum": 300, "type": "number"},
        },
        "required": [
            "prior_kcal",
            "prior_sd_kcal",
            "rho_kcal_per_kg",
            "rho_sd",
            "expenditure_slope_kcal_per_kg_day",
            "growth_kg_per_day",
            "growth_sd",
            "adaptation_gain",
            "carried_per_kcal",
            "usual_kcal",
            "is_usual_known",
        ],
        "type": "object",
    },
    "BodyCompositionRequest": {
        "additionalProperties": False,
        "properties": {
            "age_years": {"maximum": 100, "minimum": 13, "type": "number"},
            "height_cm": {"maximum": 230, "minimum": 120, "type": "number"},
            "measurements": {
                "items": {
                    "discriminator": {
                        "mapping": {
                            "bmi": "BmiMeasurement",
                            "girths": "GirthMeasurement",
                            "reading": "ReadingMeasurement",
                            "skinfolds": "SkinfoldMeasurement",
                        },
                        "propertyName": "kind",
                    },
                    "oneOf": [
                        {"$ref": "GirthMeasurement"},
                        {"$ref": "SkinfoldMeasurement"},
                        {"$ref": "ReadingMeasurement"},
                        {"$ref": "BmiMeasurement"},
                    ],
                },
                "maxItems": 60,
                "minItems": 1,
                "type": "array",
            },
            "sex": {"$ref": "Sex"},
            "training_status": {"$ref": "TrainingStatus"},
            "weight_kg": {"maximum": 300, "minimum": 30, "type": "number"},
        },
        "required": [
            "sex",
            "age_years",
            "height_cm",
            "weight_kg",
            "training_status",
            "measurements",
        ],
        "type": "object",
    },
    "BodyFat": {
        "additionalProperties": False,
        "properties": {
            "fat_fraction": {"maximum": 0.6, "minimum": 0.03, "type": "number"},
            "method": {"$ref": "BodyFatMethod"},
        },
        "required": ["fat_fraction", "method"],
        "type": "object",
    },
    "BodyFatBand": {
        "additionalProperties": False,
        "properties": {
            "lower_fat_fraction": {"maximum": 0.6, "minimum": 0.03, "type": "number"},
            "upper_fat_fraction": {"maximum": 0.6, "minimum": 0.03, "type": "number"},
        },
        "required": ["lower_fat_fraction", "upper_fat_fraction"],
        "type": "object",
    },
    "BodyFatMethod": {
        "enum": [
            "air_displacement",
            "bioimpedance",
            "bmi_equation",
            "dxa",
            "four_compartment",
            "girths",
            "hydrostatic",
            "skinfolds",
            "visual",
        ],
        "type": "string",
    },
    "CarbohydratePreference": {
        "enum": ["balanced", "higher", "lower"],
        "type": "string",
    },
    "ChangeKind": {"enum": ["end", "intake", "pause"], "type": "string"},
    "CheckIn": {
        "additionalProperties": False,
        "properties": {
            "cycle": {"anyOf": [{"$ref": "CycleSaid"}, {"type": "null"}]},
            "date": {"format": "date", "type": "string"},
            "hunger": {
                "anyOf": [
                    {"maximum": 5, "minimum": 1, "type": "integer"},
                    {"type": "null"},
                ]
            },
            "mood": {
                "anyOf": [
                    {"maximum": 5, "minimum": 1, "type": "integer"},
                    {"type": "null"},
                ]
            },
            "sleep": {
                "anyOf": [
                    {"maximum": 5, "minimum": 1, "type": "integer"},
                    {"type": "null"},
                ]
            },
            "strength": {"anyOf": [{"$ref": "StrengthSaid"}, {"type": "null"}]},
        },
        "required": ["date"],
        "type": "object",
    },
    "ChosenBand": {
        "additionalProperties": False,
        "properties": {
            "lower_fat_fraction": {"maximum": 0.6, "minimum": 0.03, "type": "number"},
            "upper_fat_fraction": {"maximum": 0.6, "minimum": 0.03, "type": "number"},
        },
        "required": ["lower_fat_fraction", "upper_fat_fraction"],
        "type": "object",
    },
    "ClinicalClearance": {
        "additionalProperties": False,
        "properties": {
            "given_by": {"maxLength": 80, "minLength": 3, "type": "string"},
            "reason": {"maxLength": 300, "minLength": 10, "type": "string"},
        },
        "required": ["given_by", "reason"],
        "type": "object",
    },
    "ComparisonRequest": {
        "additionalProperties": False,
        "properties": {
            "current_intake_kcal": {
                "anyOf": [
                    {"maximum": 8000, "minimum": 800, "type": "number"},
                    {"type": "null"},
                ]
            },
            "cut_history": {"anyOf": [{"$ref": "CutHistory"}, {"type": "null"}]},
            "horizon_weeks": {"maximum": 156, "minimum": 12, "type": "integer"},
            "limits": {"$ref": "SeasonLimits"},
            "log": {"anyOf": [{"$ref": "Log"}, {"type": "null"}]},
            "maintenance": {"anyOf": [{"$ref": "KnownMaintenance"}, {"type": "null"}]},
            "profile": {"$ref": "Profile"},
            "screening": {"anyOf": [{"$ref": "Screening"}, {"type": "null"}]},
            "start_date": {"format": "date", "type": "string"},
            "state": {"anyOf": [{"$ref": "State"}, {"type": "null"}]},
            "strategies": {
                "items": {
                    "discriminator": {
                        "mapping": {
                            "own": "OwnStrategy",
                            "ready_made": "ReadyMadeStrategy",
                        },
                        "propertyName": "kind",
                    },
                    "oneOf": [{"$ref": "ReadyMadeStrategy"}, {"$ref": "OwnStrategy"}],
                },
                "maxItems": 8,
                "minItems": 2,
                "type": "array",
            },
        },
        "required": ["profile", "start_date", "horizon_weeks", "strategies"],
        "type": "object",
    },
    "Condition": {
        "enum": [
            "absent_periods",
            "bariatric_surgery",
            "cancer",
            "diabetes_treated",
            "gallstones",
            "gout",
            "heart_disease",
            "kidney_disease",
            "liver_disease",
            "low_testosterone_symptoms",
            "phenylketonuria",
            "recent_surgery_or_injury",
            "stress_fracture",
            "thyroid_uncontrolled",
            "unexplained_weight_loss",
        ],
        "type": "string",
    },
    "Cut": {
        "additionalProperties": False,
        "properties": {
            "break_every_weeks": {
                "anyOf": [
                    {"maximum": 16, "minimum": 2, "type": "integer"},
                    {"type": "null"},
                ]
            },
            "break_weeks": {"maximum": 2, "minimum": 1, "type": "integer"},
            "carbohydrate_preference": {"$ref": "CarbohydratePreference"},
            "deficit_kcal": {
                "anyOf": [
                    {"maximum": 1500, "minimum": 100, "type": "number"},
                    {"type": "null"},
                ]
            },
            "easing_in_weeks": {"maximum": 2, "minimum": 0, "type": "integer"},
            "event_date": {
                "anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]
            },
            "fat_loss_kg": {
                "anyOf": [
                    {"maximum": 30, "minimum": 0.2, "type": "number"},
                    {"type": "null"},
                ]
            },
            "kind": {"const": "cut", "type": "string"},
            "pace": {"$ref": "Pace"},
            "protein_g_per_kg": {
                "anyOf": [
                    {"maximum": 3.5, "minimum": 1.2, "type": "number"},
                    {"type": "null"},
                ]
            },
            "target_fat_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.03, "type": "number"},
                    {"type": "null"},
                ]
            },
            "target_weight_kg": {
                "anyOf": [
                    {"maximum": 300, "minimum": 30, "type": "number"},
                    {"type": "null"},
                ]
            },
            "weeks": {
                "anyOf": [
                    {"maximum": 26, "minimum": 1, "type": "integer"},
                    {"type": "null"},
                ]
            },
            "weeks_done": {"maximum": 52, "minimum": 0, "type": "integer"},
        },
        "required": ["kind"],
        "type": "object",
    },
    "CutHistory": {
        "additionalProperties": False,
        "properties": {
            "cuts_last_12_months": {"maximum": 12, "minimum": 0, "type": "integer"},
            "weeks_since_last_cut": {
                "anyOf": [
                    {"maximum": 520, "minimum": 0, "type": "integer"},
                    {"type": "null"},
                ]
            },
        },
        "required": ["cuts_last_12_months"],
        "type": "object",
    },
    "CycleSaid": {"enum": ["late", "missed", "none", "regular"], "type": "string"},
    "DateQuestion": {
        "additionalProperties": False,
        "properties": {
            "intake_kcal": {"maximum": 8000, "minimum": 800, "type": "number"},
            "kind": {"const": "date_for_target", "type": "string"},
            "protein_g_per_kg": {"maximum": 5, "minimum": 0.3, "type": "number"},
            "target": {"$ref": "Target"},
        },
        "required": ["kind", "target", "intake_kcal"],
        "type": "object",
    },
    "DatedEvent": {
        "additionalProperties": False,
        "properties": {
            "date": {"format": "date", "type": "string"},
            "kind": {"$ref": "EventKind"},
            "until_date": {
                "anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]
            },
        },
        "required": ["kind", "date"],
        "type": "object",
    },
    "DatedMeasurement": {
        "additionalProperties": False,
        "properties": {
            "date": {"format": "date", "type": "string"},
            "measurement": {
                "discriminator": {
                    "mapping": {
                        "girths": "GirthMeasurement",
                        "reading": "ReadingMeasurement",
                        "skinfolds": "SkinfoldMeasurement",
                    },
                    "propertyName": "kind",
                },
                "oneOf": [
                    {"$ref": "GirthMeasurement"},
                    {"$ref": "SkinfoldMeasurement"},
                    {"$ref": "ReadingMeasurement"},
                ],
            },
        },
        "required": ["date", "measurement"],
        "type": "object",
    },
    "DayKindPassed": {
        "additionalProperties": False,
        "properties": {
            "carbohydrate_g": {"maximum": 4000, "minimum": 0, "type": "number"},
            "days_per_week": {"maximum": 7, "minimum": 0, "type": "integer"},
            "fat_g": {"maximum": 2000, "minimum": 0, "type": "number"},
            "intake_kcal": {"maximum": 15000, "minimum": 0, "type": "number"},
            "kind": {"maxLength": 40, "type": "string"},
            "protein_g": {"maximum": 1000, "minimum": 0, "type": "number"},
        },
        "required": [
            "kind",
            "days_per_week",
            "intake_kcal",
            "protein_g",
            "carbohydrate_g",
            "fat_g",
        ],
        "type": "object",
    },
    "DayPassed": {
        "additionalProperties": False,
        "properties": {
            "alcohol_g": {"maximum": 15000, "minimum": 0, "type": "number"},
            "carbohydrate_g": {"maximum": 15000, "minimum": 0, "type": "number"},
            "date": {"format": "date", "type": "string"},
            "fat_g": {"maximum": 15000, "minimum": 0, "type": "number"},
            "flexible": {
                "anyOf": [{"maxLength": 40, "type": "string"}, {"type": "null"}]
            },
            "intake_kcal": {"maximum": 15000, "minimum": 0, "type": "number"},
            "meals_protein_g": {
                "items": {"maximum": 15000, "minimum": 0, "type": "number"},
                "maxItems": 24,
                "type": "array",
            },
            "protein_g": {"maximum": 15000, "minimum": 0, "type": "number"},
            "training_kcal": {"maximum": 15000, "minimum": 0, "type": "number"},
            "training_minutes": {"maximum": 15000, "minimum": 0, "type": "number"},
            "weekday": {"maxLength": 40, "type": "string"},
        },
        "required": [
            "date",
            "weekday",
            "intake_kcal",
            "protein_g",
            "carbohydrate_g",
            "fat_g",
            "alcohol_g",
            "training_minutes",
            "training_kcal",
        ],
        "type": "object",
    },
    "DaySplit": {
        "additionalProperties": False,
        "properties": {
            "carbohydrate_shift": {"maximum": 0.6, "minimum": 0.05, "type": "number"},
            "higher_days_per_week": {"maximum": 6, "minimum": 1, "type": "integer"},
        },
        "required": ["higher_days_per_week"],
        "type": "object",
    },
    "DecisionRequest": {
        "additionalProperties": False,
        "properties": {
            "as_of_date": {"format": "date", "type": "string"},
            "band": {"anyOf": [{"$ref": "ChosenBand"}, {"type": "null"}]},
            "current_intake_kcal": {
                "anyOf": [
                    {"maximum": 8000, "minimum": 800, "type": "number"},
                    {"type": "null"},
                ]
            },
            "event_date": {
                "anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]
            },
            "event_fat_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.03, "type": "number"},
                    {"type": "null"},
                ]
            },
            "feeling": {"$ref": "Feeling"},
            "goal": {"$ref": "Goal"},
            "log": {"anyOf": [{"$ref": "Log"}, {"type": "null"}]},
            "maintenance": {"anyOf": [{"$ref": "KnownMaintenance"}, {"type": "null"}]},
            "phase_history": {
                "anyOf": [
                    {"items": {"$ref": "PastPhase"}, "maxItems": 60, "type": "array"},
                    {"type": "null"},
                ]
            },
            "present_phase": {"anyOf": [{"$ref": "PresentPhase"}, {"type": "null"}]},
            "profile": {"$ref": "Profile"},
            "screening": {"anyOf": [{"$ref": "Screening"}, {"type": "null"}]},
            "state": {"anyOf": [{"$ref": "State"}, {"type": "null"}]},
        },
        "required": ["profile", "as_of_date"],
        "type": "object",
    },
    "DensityConversion": {"enum": ["brozek", "siri"], "type": "string"},
    "EatingDisorder": {"enum": ["current", "none", "past", "unsure"], "type": "string"},
    "EnergyFigure": {
        "additionalProperties": False,
        "properties": {
            "mean": {"maximum": 30000, "minimum": -5000, "type": "number"},
            "standard_deviation": {"maximum": 15000, "minimum": 0, "type": "number"},
        },
        "required": ["mean", "standard_deviation"],
        "type": "object",
    },
    "EventKind": {
        "enum": [
            "alcohol",
            "creatine_start",
            "creatine_stop",
            "festive_days",
            "illness",
            "injury",
            "medicine",
            "new_programme",
            "salty_days",
            "travel",
        ],
        "type": "string",
    },
    "Feeling": {"enum": ["content", "unhappy", "would_like_leaner"], "type": "string"},
    "Finding": {
        "enum": ["as_logged", "more_than_logged", "not_done", "not_water", "water"],
        "type": "string",
    },
    "FlexibleDayAsked": {
        "additionalProperties": False,
        "properties": {
            "alcohol_g": {"maximum": 150, "minimum": 0, "type": "number"},
            "date": {"anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]},
            "extra_kcal": {"maximum": 3000, "minimum": 0, "type": "number"},
            "kind": {"$ref": "FlexibleKind"},
            "weekday": {"anyOf": [{"$ref": "Weekday"}, {"type": "null"}]},
        },
        "required": [],
        "type": "object",
    },
    "FlexibleKind": {
        "enum": ["eating_out", "higher_day", "other", "party"],
        "type": "string",
    },
    "ForecastRequest": {
        "additionalProperties": False,
        "properties": {
            "current_intake_kcal": {
                "anyOf": [
                    {"maximum": 8000, "minimum": 800, "type": "number"},
                    {"type": "null"},
                ]
            },
            "cut_history": {"anyOf": [{"$ref": "CutHistory"}, {"type": "null"}]},
            "log": {"anyOf": [{"$ref": "Log"}, {"type": "null"}]},
            "maintenance": {"anyOf": [{"$ref": "KnownMaintenance"}, {"type": "null"}]},
            "profile": {"$ref": "Profile"},
            "question": {
                "discriminator": {
                    "mapping": {
                        "date_for_target": "DateQuestion",
                        "intake_for_target": "IntakeQuestion",
                        "path": "PathQuestion",
                    },
                    "propertyName": "kind",
                },
                "oneOf": [
                    {"$ref": "PathQuestion"},
                    {"$ref": "IntakeQuestion"},
                    {"$ref": "DateQuestion"},
                ],
            },
            "screening": {"anyOf": [{"$ref": "Screening"}, {"type": "null"}]},
            "start_date": {"format": "date", "type": "string"},
            "state": {"anyOf": [{"$ref": "State"}, {"type": "null"}]},
            "uncertainty_sources": {
                "anyOf": [
                    {
                        "items": {"$ref": "UncertaintySource"},
                        "maxItems": 12,
                        "type": "array",
                    },
                    {"type": "null"},
                ]
            },
        },
        "required": ["profile", "start_date", "question"],
        "type": "object",
    },
    "Gain": {
        "additionalProperties": False,
        "properties": {
            "carbohydrate_preference": {"$ref": "CarbohydratePreference"},
            "fat_ceiling_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.08, "type": "number"},
                    {"type": "null"},
                ]
            },
            "kind": {"const": "gain", "type": "string"},
            "pace": {"$ref": "Pace"},
            "surplus_kcal": {
                "anyOf": [
                    {"maximum": 1000, "minimum": 50, "type": "number"},
                    {"type": "null"},
                ]
            },
            "target_weight_kg": {
                "anyOf": [
                    {"maximum": 300, "minimum": 30, "type": "number"},
                    {"type": "null"},
                ]
            },
            "weeks": {
                "anyOf": [
                    {"maximum": 52, "minimum": 1, "type": "integer"},
                    {"type": "null"},
                ]
            },
        },
        "required": ["kind"],
        "type": "object",
    },
    "GirthMeasurement": {
        "additionalProperties": False,
        "properties": {
            "abdomen_cm": {
                "anyOf": [
                    {"maximum": 250, "minimum": 40, "type": "number"},
                    {"type": "null"},
                ]
            },
            "hip_cm": {
                "anyOf": [
                    {"maximum": 250, "minimum": 40, "type": "number"},
                    {"type": "null"},
                ]
            },
            "kind": {"const": "girths", "type": "string"},
            "neck_cm": {"maximum": 80, "minimum": 20, "type": "number"},
            "waist_cm": {
                "anyOf": [
                    {"maximum": 250, "minimum": 40, "type": "number"},
                    {"type": "null"},
                ]
            },
        },
        "required": ["kind", "neck_cm"],
        "type": "object",
    },
    "Goal": {"enum": ["event", "hold", "leanness", "muscle"], "type": "string"},
    "Hold": {
        "additionalProperties": False,
        "properties": {
            "carbohydrate_preference": {"$ref": "CarbohydratePreference"},
            "kind": {"const": "maintenance", "type": "string"},
            "weeks": {"maximum": 26, "minimum": 1, "type": "integer"},
        },
        "required": ["kind", "weeks"],
        "type": "object",
    },
    "IntakeEntry": {
        "additionalProperties": False,
        "properties": {
            "carbohydrate_g": {
                "anyOf": [
                    {"maximum": 2000, "minimum": 0, "type": "number"},
                    {"type": "null"},
                ]
            },
            "date": {"format": "date", "type": "string"},
            "intake_kcal": {"maximum": 100000, "minimum": 0, "type": "number"},
            "is_partial": {"type": "boolean"},
        },
        "required": ["date", "intake_kcal"],
        "type": "object",
    },
    "IntakeQuestion": {
        "additionalProperties": False,
        "properties": {
            "by_date": {"format": "date", "type": "string"},
            "kind": {"const": "intake_for_target", "type": "string"},
            "protein_g_per_kg": {"maximum": 5, "minimum": 0.3, "type": "number"},
            "target": {"$ref": "Target"},
        },
        "required": ["kind", "target", "by_date"],
        "type": "object",
    },
    "IntakeStretch": {
        "additionalProperties": False,
        "properties": {
            "added_sessions": {
                "items": {"$ref": "TrainingSession"},
                "maxItems": 20,
                "type": "array",
            },
            "carbohydrate_g": {
                "anyOf": [
                    {"maximum": 1500, "minimum": 0, "type": "number"},
                    {"type": "null"},
                ]
            },
            "intake_kcal": {"maximum": 8000, "minimum": 800, "type": "number"},
            "protein_g_per_kg": {"maximum": 5, "minimum": 0.3, "type": "number"},
            "sodium_change_mg": {"maximum": 10000, "minimum": -5000, "type": "number"},
            "weeks": {"maximum": 156, "minimum": 1, "type": "integer"},
        },
        "required": ["weeks", "intake_kcal"],
        "type": "object",
    },
    "IntervalPassed": {
        "additionalProperties": False,
        "properties": {
            "coverage": {"maximum": 1, "minimum": 0, "type": "number"},
            "lower": {"maximum": 100000, "minimum": -100000, "type": "number"},
            "mean": {"maximum": 100000, "minimum": -100000, "type": "number"},
            "upper": {"maximum": 100000, "minimum": -100000, "type": "number"},
        },
        "required": ["lower", "mean", "upper"],
        "type": "object",
    },
    "KnownMaintenance": {
        "additionalProperties": False,
        "properties": {
            "kcal_per_day": {"maximum": 8000, "minimum": 800, "type": "number"},
            "standard_deviation_kcal": {
                "maximum": 600,
                "minimum": 20,
                "type": "number",
            },
        },
        "required": ["kcal_per_day", "standard_deviation_kcal"],
        "type": "object",
    },
    "KnownReading": {
        "additionalProperties": False,
        "properties": {
            "date": {"format": "date", "type": "string"},
            "fat_fraction": {"maximum": 0.6, "minimum": 0.03, "type": "number"},
            "method": {"$ref": "BodyFatMethod"},
            "standard_deviation": {"maximum": 0.3, "minimum": 0, "type": "number"},
        },
        "required": ["date", "fat_fraction", "standard_deviation", "method"],
        "type": "object",
    },
    "Log": {
        "additionalProperties": False,
        "properties": {
            "check_ins": {
                "items": {"$ref": "CheckIn"},
                "maxItems": 400,
                "type": "array",
            },
            "cycle": {
                "items": {"format": "date", "type": "string"},
                "maxItems": 60,
                "type": "array",
            },
            "events": {
                "items": {"$ref": "DatedEvent"},
                "maxItems": 100,
                "type": "array",
            },
            "intakes": {
                "items": {"$ref": "IntakeEntry"},
                "maxItems": 2000,
                "type": "array",
            },
            "measurements": {
                "items": {"$ref": "DatedMeasurement"},
                "maxItems": 200,
                "type": "array",
            },
            "steps": {
                "items": {"$ref": "StepsEntry"},
                "maxItems": 2000,
                "type": "array",
            },
            "weights": {
                "items": {"$ref": "WeightEntry"},
                "maxItems": 4000,
                "type": "array",
            },
        },
        "required": ["weights"],
        "type": "object",
    },
    "MaintenanceBasis": {"enum": ["equations", "log", "told"], "type": "string"},
    "MaintenanceRequest": {
        "additionalProperties": False,
        "properties": {
            "as_of_date": {
                "anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]
            },
            "log": {"anyOf": [{"$ref": "Log"}, {"type": "null"}]},
            "profile": {"$ref": "Profile"},
            "screening": {"anyOf": [{"$ref": "Screening"}, {"type": "null"}]},
            "state": {"anyOf": [{"$ref": "State"}, {"type": "null"}]},
        },
        "required": ["profile"],
        "type": "object",
    },
    "MassFigure": {
        "additionalProperties": False,
        "properties": {
            "mean": {"maximum": 350, "minimum": -30, "type": "number"},
            "standard_deviation": {"maximum": 100, "minimum": 0, "type": "number"},
        },
        "required": ["mean", "standard_deviation"],
        "type": "object",
    },
    "Medicine": {
        "enum": [
            "diuretic",
            "glp1_agonist",
            "insulin_or_secretagogue",
            "lithium",
            "sglt2_inhibitor",
            "warfarin",
        ],
        "type": "string",
    },
    "MiniCut": {
        "additionalProperties": False,
        "properties": {
            "carbohydrate_preference": {"$ref": "CarbohydratePreference"},
            "deficit_kcal": {
                "anyOf": [
                    {"maximum": 1500, "minimum": 100, "type": "number"},
                    {"type": "null"},
                ]
            },
            "easing_in_weeks": {"maximum": 2, "minimum": 0, "type": "integer"},
            "event_date": {
                "anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]
            },
            "fat_loss_kg": {
                "anyOf": [
                    {"maximum": 30, "minimum": 0.2, "type": "number"},
                    {"type": "null"},
                ]
            },
            "kind": {"const": "mini_cut", "type": "string"},
            "pace": {"$ref": "Pace"},
            "protein_g_per_kg": {
                "anyOf": [
                    {"maximum": 3.5, "minimum": 1.2, "type": "number"},
                    {"type": "null"},
                ]
            },
            "target_fat_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.03, "type": "number"},
                    {"type": "null"},
                ]
            },
            "target_weight_kg": {
                "anyOf": [
                    {"maximum": 300, "minimum": 30, "type": "number"},
                    {"type": "null"},
                ]
            },
            "weeks": {
                "anyOf": [
                    {"maximum": 6, "minimum": 1, "type": "integer"},
                    {"type": "null"},
                ]
            },
            "weeks_done": {"maximum": 6, "minimum": 0, "type": "integer"},
        },
        "required": ["kind"],
        "type": "object",
    },
    "OptimumRequest": {
        "additionalProperties": False,
        "properties": {
            "caution": {"maximum": 2, "minimum": 0, "type": "number"},
            "current_intake_kcal": {
                "anyOf": [
                    {"maximum": 8000, "minimum": 800, "type": "number"},
                    {"type": "null"},
                ]
            },
            "cut_history": {"anyOf": [{"$ref": "CutHistory"}, {"type": "null"}]},
            "horizon_weeks": {"maximum": 156, "minimum": 12, "type": "integer"},
            "limits": {"$ref": "SeasonLimits"},
            "log": {"anyOf": [{"$ref": "Log"}, {"type": "null"}]},
            "maintenance": {"anyOf": [{"$ref": "KnownMaintenance"}, {"type": "null"}]},
            "profile": {"$ref": "Profile"},
            "screening": {"anyOf": [{"$ref": "Screening"}, {"type": "null"}]},
            "start_date": {"format": "date", "type": "string"},
            "state": {"anyOf": [{"$ref": "State"}, {"type": "null"}]},
            "strategies_searched": {
                "maximum": 100000,
                "minimum": 500,
                "type": "integer",
            },
        },
        "required": ["profile", "start_date", "horizon_weeks"],
        "type": "object",
    },
    "OwnStrategy": {
        "additionalProperties": False,
        "properties": {
            "cut_at_fat_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.03, "type": "number"},
                    {"type": "null"},
                ]
            },
            "cut_to_fat_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.03, "type": "number"},
                    {"type": "null"},
                ]
            },
            "deficit_kcal": {
                "anyOf": [
                    {"maximum": 1500, "minimum": 100, "type": "number"},
                    {"type": "null"},
                ]
            },
            "kind": {"const": "own", "type": "string"},
            "label": {"maxLength": 40, "minLength": 1, "type": "string"},
            "longest_cut_weeks": {"maximum": 26, "minimum": 2, "type": "integer"},
            "maintenance_weeks": {"maximum": 12, "minimum": 1, "type": "integer"},
            "surplus_kcal": {"maximum": 1000, "minimum": 0, "type": "number"},
        },
        "required": ["kind", "surplus_kcal"],
        "type": "object",
    },
    "Pace": {"enum": ["brisk", "gentle", "steady"], "type": "string"},
    "PastPhase": {
        "additionalProperties": False,
        "properties": {
            "end_fat_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.03, "type": "number"},
                    {"type": "null"},
                ]
            },
            "end_weight_kg": {
                "anyOf": [
                    {"maximum": 300, "minimum": 30, "type": "number"},
                    {"type": "null"},
                ]
            },
            "kind": {"$ref": "PhaseKind"},
            "start_date": {"format": "date", "type": "string"},
            "start_fat_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.03, "type": "number"},
                    {"type": "null"},
                ]
            },
            "start_weight_kg": {
                "anyOf": [
                    {"maximum": 300, "minimum": 30, "type": "number"},
                    {"type": "null"},
                ]
            },
            "weeks": {"maximum": 104, "minimum": 1, "type": "integer"},
        },
        "required": ["kind", "start_date", "weeks"],
        "type": "object",
    },
    "PathQuestion": {
        "additionalProperties": False,
        "properties": {
            "kind": {"const": "path", "type": "string"},
            "schedule": {
                "items": {"$ref": "IntakeStretch"},
                "maxItems": 40,
                "minItems": 1,
                "type": "array",
            },
        },
        "required": ["kind", "schedule"],
        "type": "object",
    },
    "Pause": {
        "additionalProperties": False,
        "properties": {
            "reason": {"$ref": "PauseReason"},
            "weeks": {"maximum": 12, "minimum": 1, "type": "integer"},
        },
        "required": ["weeks"],
        "type": "object",
    },
    "PauseReason": {"enum": ["illness", "injury", "other", "travel"], "type": "string"},
    "PhaseChange": {
        "additionalProperties": False,
        "properties": {
            "change_kcal": {"maximum": 15000, "minimum": -15000, "type": "number"},
            "date": {"format": "date", "type": "string"},
            "kind": {"$ref": "ChangeKind"},
            "reason": {
                "anyOf": [{"maxLength": 200, "type": "string"}, {"type": "null"}]
            },
            "until_date": {
                "anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]
            },
        },
        "required": ["kind", "date"],
        "type": "object",
    },
    "PhaseFollowed": {
        "additionalProperties": False,
        "properties": {
            "adherence": {"$ref": "AdherenceFigure"},
            "changes": {
                "items": {"$ref": "PhaseChange"},
                "maxItems": 200,
                "type": "array",
            },
            "fat_ceiling_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.08, "type": "number"},
                    {"type": "null"},
                ]
            },
            "fat_loss_kg": {
                "anyOf": [
                    {"maximum": 40, "minimum": 0.2, "type": "number"},
                    {"type": "null"},
                ]
            },
            "kind": {"$ref": "PhaseKind"},
            "logging_ratio": {"anyOf": [{"$ref": "RatioFigure"}, {"type": "null"}]},
            "maintenance": {"$ref": "KnownMaintenance"},
            "start_body": {"anyOf": [{"$ref": "StartBody"}, {"type": "null"}]},
            "start_date": {"format": "date", "type": "string"},
            "usual_intake_kcal": {
                "anyOf": [
                    {"maximum": 8000, "minimum": 800, "type": "number"},
                    {"type": "null"},
                ]
            },
            "weeks": {
                "items": {"$ref": "WeekFollowed"},
                "maxItems": 156,
                "minItems": 1,
                "type": "array",
            },
            "weeks_before": {"maximum": 156, "minimum": 0, "type": "number"},
        },
        "required": ["kind", "start_date", "weeks", "maintenance"],
        "type": "object",
    },
    "PhaseKind": {"enum": ["cut", "gain", "maintenance", "mini_cut"], "type": "string"},
    "PlanChoice": {"enum": ["levers", "sizes"], "type": "string"},
    "PlanRequest": {
        "additionalProperties": False,
        "properties": {
            "current_intake_kcal": {
                "anyOf": [
                    {"maximum": 8000, "minimum": 800, "type": "number"},
                    {"type": "null"},
                ]
            },
            "cut_history": {"anyOf": [{"$ref": "CutHistory"}, {"type": "null"}]},
            "day_split": {"anyOf": [{"$ref": "DaySplit"}, {"type": "null"}]},
            "include": {
                "items": {"$ref": "PlanChoice"},
                "maxItems": 12,
                "type": "array",
            },
            "log": {"anyOf": [{"$ref": "Log"}, {"type": "null"}]},
            "maintenance": {"anyOf": [{"$ref": "KnownMaintenance"}, {"type": "null"}]},
            "pause": {"anyOf": [{"$ref": "Pause"}, {"type": "null"}]},
            "phase": {
                "discriminator": {
                    "mapping": {
                        "cut": "Cut",
                        "gain": "Gain",
                        "maintenance": "Hold",
                        "mini_cut": "MiniCut",
                    },
                    "propertyName": "kind",
                },
                "oneOf": [
                    {"$ref": "MiniCut"},
                    {"$ref": "Cut"},
                    {"$ref": "Gain"},
                    {"$ref": "Hold"},
                ],
            },
            "profile": {"$ref": "Profile"},
            "return_to_gain": {"$ref": "ReturnToGain"},
            "screening": {"anyOf": [{"$ref": "Screening"}, {"type": "null"}]},
            "start_date": {"format": "date", "type": "string"},
            "state": {"anyOf": [{"$ref": "State"}, {"type": "null"}]},
            "uncertainty_sources": {
                "anyOf": [
                    {
                        "items": {"$ref": "UncertaintySource"},
                        "maxItems": 12,
                        "type": "array",
                    },
                    {"type": "null"},
                ]
            },
            "week": {"anyOf": [{"$ref": "WeekAsked"}, {"type": "null"}]},
        },
        "required": ["profile", "start_date", "phase"],
        "type": "object",
    },
    "PointPassed": {
        "additionalProperties": False,
        "properties": {
            "carried_kg": {"$ref": "IntervalPassed"},
            "date": {"format": "date", "type": "string"},
            "fat_fraction": {"$ref": "IntervalPassed"},
            "fat_kg": {"$ref": "IntervalPassed"},
            "lean_kg": {"$ref": "IntervalPassed"},
            "maintenance_kcal": {"$ref": "IntervalPassed"},
            "weight_kg": {"$ref": "IntervalPassed"},
        },
        "required": [
            "date",
            "weight_kg",
            "fat_kg",
            "lean_kg",
            "carried_kg",
            "fat_fraction",
            "maintenance_kcal",
        ],
        "type": "object",
    },
    "PresentPhase": {
        "additionalProperties": False,
        "properties": {
            "kind": {"$ref": "PhaseKind"},
            "weeks_done": {"maximum": 156, "minimum": 0, "type": "integer"},
        },
        "required": ["kind", "weeks_done"],
        "type": "object",
    },
    "Profile": {
        "additionalProperties": False,
        "properties": {
            "activity": {
                "discriminator": {
                    "mapping": {"level": "ActivityByLevel", "week": "ActivityByWeek"},
                    "propertyName": "kind",
                },
                "oneOf": [{"$ref": "ActivityByLevel"}, {"$ref": "ActivityByWeek"}],
            },
            "age_years": {"maximum": 100, "minimum": 13, "type": "number"},
            "body_fat": {"anyOf": [{"$ref": "BodyFat"}, {"type": "null"}]},
            "height_cm": {"maximum": 230, "minimum": 120, "type": "number"},
            "sex": {"$ref": "Sex"},
            "training": {"$ref": "Training"},
            "weight_kg": {"maximum": 300, "minimum": 30, "type": "number"},
        },
        "required": [
            "sex",
            "age_years",
            "height_cm",
            "weight_kg",
            "activity",
            "training",
        ],
        "type": "object",
    },
    "QuestionAsked": {
        "additionalProperties": False,
        "properties": {
            "asked_count": {"maximum": 1000, "minimum": 1, "type": "integer"},
            "date": {"format": "date", "type": "string"},
            "test": {"$ref": "SettlingTest"},
        },
        "required": ["date", "test"],
        "type": "object",
    },
    "RatioFigure": {
        "additionalProperties": False,
        "properties": {
            "mean": {"maximum": 1.5, "minimum": 0.2, "type": "number"},
            "standard_deviation": {"maximum": 1, "minimum": 0, "type": "number"},
        },
        "required": ["mean", "standard_deviation"],
        "type": "object",
    },
    "ReadSoFar": {
        "additionalProperties": False,
        "properties": {
            "accounts": {
                "items": {"$ref": "AccountAsRead"},
                "maxItems": 5,
                "type": "array",
            },
            "body": {"$ref": "BodyAsRead"},
            "carbohydrate_kcal": {
                "items": {
                    "anyOf": [
                        {"maximum": 100000, "minimum": 0, "type": "number"},
                        {"type": "null"},
                    ]
                },
                "maxItems": 70,
                "type": "array",
            },
            "date": {"anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]},
            "days": {"maximum": 40000, "minimum": 0, "type": "integer"},
            "days_logged": {"maximum": 40000, "minimum": 0, "type": "integer"},
            "intakes": {
                "items": {
                    "anyOf": [
                        {"maximum": 100000, "minimum": 0, "type": "number"},
                        {"type": "null"},
                    ]
                },
                "maxItems": 70,
                "type": "array",
            },
            "noise_variance": {"maximum": 100, "minimum": 0, "type": "number"},
            "steps": {"anyOf": [{"$ref": "StepsAsRead"}, {"type": "null"}]},
        },
        "required": ["body"],
        "type": "object",
    },
    "ReadingMeasurement": {
        "additionalProperties": False,
        "properties": {
            "fat_fraction": {"maximum": 0.6, "minimum": 0.03, "type": "number"},
            "kind": {"const": "reading", "type": "string"},
            "method": {"$ref": "BodyFatMethod"},
        },
        "required": ["kind", "fat_fraction", "method"],
        "type": "object",
    },
    "ReadyMade": {
        "enum": [
            "fast_gain_long_cut",
            "fast_gain_repeated_mini_cuts",
            "slow_gain_no_cut",
            "slow_gain_rare_mini_cuts",
        ],
        "type": "string",
    },
    "ReadyMadeStrategy": {
        "additionalProperties": False,
        "properties": {
            "kind": {"const": "ready_made", "type": "string"},
            "name": {"$ref": "ReadyMade"},
        },
        "required": ["kind", "name"],
        "type": "object",
    },
    "ReturnToGain": {
        "additionalProperties": False,
        "properties": {
            "fat_ceiling_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.08, "type": "number"},
                    {"type": "null"},
                ]
            },
            "gain_weeks": {"maximum": 26, "minimum": 0, "type": "integer"},
            "maintenance_weeks": {"maximum": 4, "minimum": 1, "type": "integer"},
            "surplus_kcal": {
                "anyOf": [
                    {"maximum": 1000, "minimum": 50, "type": "number"},
                    {"type": "null"},
                ]
            },
        },
        "required": [],
        "type": "object",
    },
    "ReviewRequest": {
        "additionalProperties": False,
        "properties": {
            "as_of_date": {
                "anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]
            },
            "is_finished": {"type": "boolean"},
            "log": {"anyOf": [{"$ref": "Log"}, {"type": "null"}]},
            "phase": {"anyOf": [{"$ref": "PhaseFollowed"}, {"type": "null"}]},
            "profile": {"$ref": "Profile"},
            "screening": {"anyOf": [{"$ref": "Screening"}, {"type": "null"}]},
            "settled": {"anyOf": [{"$ref": "SettledQuestion"}, {"type": "null"}]},
            "state": {"anyOf": [{"$ref": "State"}, {"type": "null"}]},
        },
        "required": ["profile"],
        "type": "object",
    },
    "RosterMember": {
        "additionalProperties": False,
        "properties": {
            "attention": {"$ref": "Attention"},
            "before": {"anyOf": [{"$ref": "Attention"}, {"type": "null"}]},
            "reference": {"maxLength": 200, "minLength": 1, "type": "string"},
        },
        "required": ["reference", "attention"],
        "type": "object",
    },
    "RosterRequest": {
        "additionalProperties": False,
        "properties": {
            "as_of_date": {"format": "date", "type": "string"},
            "members": {
                "items": {"$ref": "RosterMember"},
                "maxItems": 500,
                "type": "array",
            },
        },
        "required": ["as_of_date", "members"],
        "type": "object",
    },
    "Said": {
        "additionalProperties": False,
        "properties": {
            "code": {"maxLength": 60, "type": "string"},
            "text": {"maxLength": 400, "type": "string"},
        },
        "required": ["code", "text"],
        "type": "object",
    },
    "Screening": {
        "additionalProperties": False,
        "properties": {
            "clinical_clearance": {
                "anyOf": [{"$ref": "ClinicalClearance"}, {"type": "null"}]
            },
            "conditions": {
                "items": {"$ref": "Condition"},
                "maxItems": 20,
                "type": "array",
            },
            "eating_disorder": {"$ref": "EatingDisorder"},
            "is_breastfeeding": {"type": "boolean"},
            "is_pregnant": {"type": "boolean"},
            "medicines": {
                "items": {"$ref": "Medicine"},
                "maxItems": 20,
                "type": "array",
            },
        },
        "required": [
            "is_pregnant",
            "is_breastfeeding",
            "eating_disorder",
            "conditions",
            "medicines",
        ],
        "type": "object",
    },
    "SeasonEvent": {
        "additionalProperties": False,
        "properties": {
            "date": {"format": "date", "type": "string"},
            "most_fat_fraction": {
                "anyOf": [
                    {"maximum": 0.6, "minimum": 0.03, "type": "number"},
                    {"type": "null"},
                ]
            },
        },
        "required": ["date"],
        "type": "object",
    },
    "SeasonLimits": {
        "additionalProperties": False,
        "properties": {
            "band": {"anyOf": [{"$ref": "BodyFatBand"}, {"type": "null"}]},
            "blocked_dates": {
                "items": {"$ref": "BlockedDates"},
                "maxItems": 40,
                "type": "array",
            },
            "events": {
                "items": {"$ref": "SeasonEvent"},
                "maxItems": 20,
                "type": "array",
            },
            "least_weeks_between_cuts": {
                "maximum": 104,
                "minimum": 2,
                "type": "integer",
            },
            "most_cuts": {
                "anyOf": [
                    {"maximum": 20, "minimum": 0, "type": "integer"},
                    {"type": "null"},
                ]
            },
            "most_cuts_a_year": {"maximum": 6, "minimum": 0, "type": "integer"},
            "most_weeks_above_band": {
                "anyOf": [
                    {"maximum": 156, "minimum": 0, "type": "integer"},
                    {"type": "null"},
                ]
            },
            "most_weeks_dieting": {
                "anyOf": [
                    {"maximum": 156, "minimum": 0, "type": "integer"},
                    {"type": "null"},
                ]
            },
        },
        "required": [],
        "type": "object",
    },
    "SeasonRequest": {
        "additionalProperties": False,
        "properties": {
            "current_intake_kcal": {
                "anyOf": [
                    {"maximum": 8000, "minimum": 800, "type": "number"},
                    {"type": "null"},
                ]
            },
            "cut_history": {"anyOf": [{"$ref": "CutHistory"}, {"type": "null"}]},
            "horizon_weeks": {"maximum": 156, "minimum": 12, "type": "integer"},
            "limits": {"$ref": "SeasonLimits"},
            "log": {"anyOf": [{"$ref": "Log"}, {"type": "null"}]},
            "maintenance": {"anyOf": [{"$ref": "KnownMaintenance"}, {"type": "null"}]},
            "profile": {"$ref": "Profile"},
            "screening": {"anyOf": [{"$ref": "Screening"}, {"type": "null"}]},
            "start_date": {"format": "date", "type": "string"},
            "state": {"anyOf": [{"$ref": "State"}, {"type": "null"}]},
            "strategy": {
                "discriminator": {
                    "mapping": {
                        "own": "OwnStrategy",
                        "ready_made": "ReadyMadeStrategy",
                    },
                    "propertyName": "kind",
                },
                "oneOf": [{"$ref": "ReadyMadeStrategy"}, {"$ref": "OwnStrategy"}],
            },
        },
        "required": ["profile", "start_date", "horizon_weeks", "strategy"],
        "type": "object",
    },
    "SettledQuestion": {
        "additionalProperties": False,
        "properties": {
            "date": {"format": "date", "type": "string"},
            "found": {"$ref": "Finding"},
        },
        "required": ["date", "found"],
        "type": "object",
    },
    "SettlingTest": {
        "enum": ["clinician", "cycle", "oil_and_alcohol", "water", "weigh_food"],
        "type": "string",
    },
    "Sex": {"enum": ["female", "male", "unspecified"], "type": "string"},
    "SkinfoldMeasurement": {
        "additionalProperties": False,
        "properties": {
            "abdomen_mm": {
                "anyOf": [
                    {"maximum": 100, "minimum": 1, "type": "number"},
                    {"type": "null"},
                ]
            },
            "biceps_mm": {
                "anyOf": [
                    {"maximum": 100, "minimum": 1, "type": "number"},
                    {"type": "null"},
                ]
            },
            "chest_mm": {
                "anyOf": [
                    {"maximum": 100, "minimum": 1, "type": "number"},
                    {"type": "null"},
                ]
            },
            "conversion": {"$ref": "DensityConversion"},
            "equation": {"$ref": "SkinfoldMethod"},
            "kind": {"const": "skinfolds", "type": "string"},
            "midaxillary_mm": {
                "anyOf": [
                    {"maximum": 100, "minimum": 1, "type": "number"},
                    {"type": "null"},
                ]
            },
            "subscapular_mm": {
                "anyOf": [
                    {"maximum": 100, "minimum": 1, "type": "number"},
                    {"type": "null"},
                ]
            },
            "suprailiac_mm": {
                "anyOf": [
                    {"maximum": 100, "minimum": 1, "type": "number"},
                    {"type": "null"},
                ]
            },
            "thigh_mm": {
                "anyOf": [
                    {"maximum": 100, "minimum": 1, "type": "number"},
                    {"type": "null"},
                ]
            },
            "triceps_mm": {
                "anyOf": [
                    {"maximum": 100, "minimum": 1, "type": "number"},
                    {"type": "null"},
                ]
            },
        },
        "required": ["kind", "equation"],
        "type": "object",
    },
    "SkinfoldMethod": {
        "enum": ["durnin_womersley_4", "jackson_pollock_3", "jackson_pollock_7"],
        "type": "string",
    },
    "StartBody": {
        "additionalProperties": False,
        "properties": {
            "fat_is_measured": {"type": "boolean"},
            "fat_kg": {"$ref": "MassFigure"},
            "fat_method": {"$ref": "BodyFatMethod"},
            "weight_kg": {"$ref": "MassFigure"},
        },
        "required": ["weight_kg", "fat_kg", "fat_method", "fat_is_measured"],
        "type": "object",
    },
    "State": {
        "additionalProperties": False,
        "properties": {
            "adaptation_kcal": {"$ref": "EnergyFigure"},
            "adherence": {"$ref": "AdherenceFigure"},
            "as_of_date": {"format": "date", "type": "string"},
            "attention": {"anyOf": [{"$ref": "Attention"}, {"type": "null"}]},
            "carried_kg": {"$ref": "MassFigure"},
            "fat_is_measured": {"type": "boolean"},
            "fat_kg": {"$ref": "MassFigure"},
            "fat_method": {"$ref": "BodyFatMethod"},
            "height_cm": {"maximum": 230, "minimum": 120, "type": "number"},
            "lean_kg": {"$ref": "MassFigure"},
            "log": {"anyOf": [{"$ref": "Log"}, {"type": "null"}]},
            "logging_ratio": {"$ref": "RatioFigure"},
            "maintenance_basis": {"$ref": "MaintenanceBasis"},
            "maintenance_kcal": {"$ref": "EnergyFigure"},
            "phase": {"anyOf": [{"$ref": "PhaseFollowed"}, {"type": "null"}]},
            "phase_history": {
                "anyOf": [
                    {"items": {"$ref": "PastPhase"}, "maxItems": 60, "type": "array"},
                    {"type": "null"},
                ]
            },
            "physical_maintenance_kcal": {"$ref": "EnergyFigure"},
            "question": {"$ref": "QuestionAsked"},
            "reading": {"anyOf": [{"$ref": "ReadSoFar"}, {"type": "null"}]},
            "readings": {
                "items": {"$ref": "KnownReading"},
                "maxItems": 40,
                "type": "array",
            },
            "sex": {"$ref": "Sex"},
            "steered": {"$ref": "SteeredFigure"},
            "training": {"$ref": "Training"},
            "usual_intake_kcal": {
                "anyOf": [
                    {"maximum": 8000, "minimum": 800, "type": "number"},
                    {"type": "null"},
                ]
            },
            "version": {"maximum": 1, "minimum": 1, "type": "integer"},
            "weight_kg": {"$ref": "MassFigure"},
        },
        "required": [
            "as_of_date",
            "sex",
            "height_cm",
            "weight_kg",
            "fat_kg",
            "lean_kg",
            "carried_kg",
            "fat_method",
            "fat_is_measured",
            "maintenance_kcal",
            "physical_maintenance_kcal",
            "logging_ratio",
            "maintenance_basis",
            "adaptation_kcal",
            "training",
        ],
        "type": "object",
    },
    "SteeredFigure": {
        "additionalProperties": False,
        "properties": {
            "date": {"format": "date", "type": "string"},
            "mean_kcal": {"exclusiveMinimum": 100, "maximum": 30000, "type": "number"},
            "standard_deviation_kcal": {
                "exclusiveMinimum": 0,
                "maximum": 15000,
                "type": "number",
            },
        },
        "required": ["date", "mean_kcal", "standard_deviation_kcal"],
        "type": "object",
    },
    "StepsAsRead": {
        "additionalProperties": False,
        "properties": {
            "days": {"maximum": 40000, "minimum": 0, "type": "integer"},
            "first": {"maximum": 60000, "minimum": 0, "type": "number"},
            "kcal_per_step": {"maximum": 0.08, "minimum": 0, "type": "number"},
            "mean": {"maximum": 60000, "minimum": 0, "type": "number"},
            "settled": {"maximum": 60000, "minimum": 0, "type": "number"},
        },
        "required": ["days", "first", "mean", "settled", "kcal_per_step"],
        "type": "object",
    },
    "StepsEntry": {
        "additionalProperties": False,
        "properties": {
            "date": {"format": "date", "type": "string"},
            "steps": {"maximum": 100000, "minimum": 0, "type": "integer"},
        },
        "required": ["date", "steps"],
        "type": "object",
    },
    "StrengthSaid": {"enum": ["down", "down_much", "steady", "up"], "type": "string"},
    "Target": {
        "additionalProperties": False,
        "properties": {
            "quantity": {"$ref": "TargetQuantity"},
            "value": {"exclusiveMinimum": 0, "maximum": 300, "type": "number"},
        },
        "required": ["quantity", "value"],
        "type": "object",
    },
    "TargetQuantity": {
        "enum": ["fat_fraction", "fat_kg", "weight_kg"],
        "type": "string",
    },
    "Training": {
        "additionalProperties": False,
        "properties": {
            "is_new_programme": {"type": "boolean"},
            "resistance_sessions_per_week": {
                "maximum": 14,
                "minimum": 0,
                "type": "number",
            },
            "status": {"$ref": "TrainingStatus"},
        },
        "required": ["status", "resistance_sessions_per_week"],
        "type": "object",
    },
    "TrainingDay": {
        "additionalProperties": False,
        "properties": {
            "kind": {"$ref": "TrainingKind"},
            "met": {
                "anyOf": [
                    {"maximum": 20, "minimum": 1, "type": "number"},
                    {"type": "null"},
                ]
            },
            "minutes": {"maximum": 600, "minimum": 5, "type": "number"},
            "weekday": {"$ref": "Weekday"},
        },
        "required": ["weekday"],
        "type": "object",
    },
    "TrainingKind": {
        "enum": ["cycling", "other", "resistance", "running", "walking"],
        "type": "string",
    },
    "TrainingSession": {
        "additionalProperties": False,
        "properties": {
            "met": {"maximum": 20, "minimum": 1, "type": "number"},
            "minutes": {"maximum": 600, "minimum": 1, "type": "number"},
            "times_per_week": {"exclusiveMinimum": 0, "maximum": 21, "type": "number"},
        },
        "required": ["met", "minutes", "times_per_week"],
        "type": "object",
    },
    "TrainingStatus": {
        "enum": ["advanced", "intermediate", "novice", "untrained"],
        "type": "string",
    },
    "TrendChoice": {"const": "implied_intake", "type": "string"},
    "TrendRequest": {
        "additionalProperties": False,
        "properties": {
            "aim": {"anyOf": [{"$ref": "Aim"}, {"type": "null"}]},
            "as_of_date": {
                "anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]
            },
            "include": {
                "items": {"$ref": "TrendChoice"},
                "maxItems": 12,
                "type": "array",
            },
            "log": {"anyOf": [{"$ref": "Log"}, {"type": "null"}]},
            "measurements": {
                "items": {"$ref": "DatedMeasurement"},
                "maxItems": 200,
                "type": "array",
            },
            "profile": {"$ref": "Profile"},
            "screening": {"anyOf": [{"$ref": "Screening"}, {"type": "null"}]},
            "state": {"anyOf": [{"$ref": "State"}, {"type": "null"}]},
            "usual_intake_kcal": {
                "anyOf": [
                    {"maximum": 8000, "minimum": 800, "type": "number"},
                    {"type": "null"},
                ]
            },
        },
        "required": ["profile"],
        "type": "object",
    },
    "UncertaintySource": {
        "enum": [
            "adaptation",
            "adherence",
            "body_fat",
            "carried_mass",
            "daily_noise",
            "maintenance",
            "partition",
            "training_response",
        ],
        "type": "string",
    },
    "WeekAsked": {
        "additionalProperties": False,
        "properties": {
            "flexible_days": {
                "items": {"$ref": "FlexibleDayAsked"},
                "maxItems": 60,
                "type": "array",
            },
            "is_plant_based": {"type": "boolean"},
            "meals_per_day": {"maximum": 8, "minimum": 1, "type": "integer"},
            "training": {
                "items": {"$ref": "TrainingDay"},
                "maxItems": 21,
                "type": "array",
            },
        },
        "required": [],
        "type": "object",
    },
    "WeekFollowed": {
        "additionalProperties": False,
        "properties": {
            "at_end": {"anyOf": [{"$ref": "PointPassed"}, {"type": "null"}]},
            "by_day": {"items": {"$ref": "DayPassed"}, "maxItems": 7, "type": "array"},
            "carbohydrate_g": {
                "anyOf": [
                    {"maximum": 4000, "minimum": 0, "type": "number"},
                    {"type": "null"},
                ]
            },
            "day_kinds": {
                "items": {"$ref": "DayKindPassed"},
                "maxItems": 7,
                "type": "array",
            },
            "days": {
                "anyOf": [
                    {"maximum": 7, "minimum": 1, "type": "integer"},
                    {"type": "null"},
                ]
            },
            "element": {
                "anyOf": [{"maxLength": 40, "type": "string"}, {"type": "null"}]
            },
            "energy_balance_kcal": {
                "anyOf": [
                    {"maximum": 15000, "minimum": -15000, "type": "number"},
                    {"type": "null"},
                ]
            },
            "fat_g": {
                "anyOf": [
                    {"maximum": 1000, "minimum": 0, "type": "number"},
                    {"type": "null"},
                ]
            },
            "fibre_g": {
                "anyOf": [
                    {"maximum": 500, "minimum": 0, "type": "number"},
                    {"type": "null"},
                ]
            },
            "intake_kcal": {"maximum": 25000, "minimum": 300, "type": "number"},
            "is_break": {"type": "boolean"},
            "planned_intake_kcal": {
                "anyOf": [
                    {"maximum": 25000, "minimum": 300, "type": "number"},
                    {"type": "null"},
                ]
            },
            "protein_g": {"maximum": 1000, "minimum": 5, "type": "number"},
            "start_date": {
                "anyOf": [{"format": "date", "type": "string"}, {"type": "null"}]
            },
            "week": {
                "anyOf": [
                    {"maximum": 400, "minimum": 1, "type": "integer"},
                    {"type": "null"},
                ]
            },
        },
        "required": ["intake_kcal", "protein_g"],
        "type": "object",
    },
    "Weekday": {
        "enum": [
            "friday",
            "monday",
            "saturday",
            "sunday",
            "thursday",
            "tuesday",
            "wednesday",
        ],
        "type": "string",
    },
    "WeightEntry": {
        "additionalProperties": False,
        "properties": {
            "date": {"format": "date", "type": "string"},
            "order": {"maximum": 50, "minimum": 0, "type": "integer"},
            "weight_kg": {"exclusiveMinimum": 0, "maximum": 2000, "type": "number"},
        },
        "required": ["date", "weight_kg"],
        "type": "object",
    },
}
