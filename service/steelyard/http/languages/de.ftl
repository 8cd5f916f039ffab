### Was der Dienst sagt, auf Deutsch. Syntax: Project Fluent 1.0; Aufbau wie in der englischen Datei.

language-name = Deutsch
language-locale = de-DE

## shared

weeks = { $weeks ->
    [one] 1 Woche
   *[other] { $weeks } Wochen
}
bridge-weeks = { $bridge_weeks ->
    [one] 1 Woche
   *[other] { $bridge_weeks } Wochen
}
cut-weeks = { $cut_weeks ->
    [one] 1 Woche
   *[other] { $cut_weeks } Wochen
}
days = { $days ->
    [one] 1 Tag
   *[other] { $days } Tage
}
since-days = { $days ->
    [one] 1 Tag
   *[other] { $days } Tagen
}
more-days = { $more_days ->
    [one] 1 weiteren Tag
   *[other] { $more_days } weitere Tage
}
every-weeks = { $weeks ->
    [one] jede Woche
   *[other] alle { $weeks } Wochen
}
weekday = { $weekday ->
    [1] Montag
    [2] Dienstag
    [3] Mittwoch
    [4] Donnerstag
    [5] Freitag
    [6] Samstag
   *[7] Sonntag
}
weekday-name = { $weekday ->
    [1] Montag
    [2] Dienstag
    [3] Mittwoch
    [4] Donnerstag
    [5] Freitag
    [6] Samstag
   *[7] Sonntag
}
meals = { $meals ->
    [one] 1 Mahlzeit
   *[other] { $meals } Mahlzeiten
}
phase = { $kind ->
    [mini_cut] ein Mini-Cut
    [cut] eine Diätphase
    [gain] aufbauen
   *[maintenance] halten
}
phase-name = { $kind ->
    [mini_cut] Mini-Cut
    [cut] Diätphase
    [gain] Aufbau
   *[maintenance] Erhaltung
}
best-phase = { $best ->
    [mini_cut] ein Mini-Cut
    [cut] eine Diätphase
    [gain] ein Aufbau
   *[maintenance] Halten
}
other-phase = { $other ->
    [mini_cut] ein Mini-Cut
    [cut] eine Diätphase
    [gain] ein Aufbau
   *[maintenance] Halten
}
advice = { $advice ->
    [gain] Baue auf.
   *[maintenance] Halte.
}
shut = { $shut ->
    [age] ab 65 ohne ärztliche Freigabe
    [most] über die erlaubte Zahl hinaus
    [year] nach so vielen in einem Jahr
    [end] so kurz vor dem Saisonende
    [dates] so nah an Sperrtagen oder einem Anlass
    [recent] so kurz nach der letzten
   *[safe] vorerst zu deiner Sicherheit
}
why = { $why ->
    [share_of_maintenance] Weniger Essen läge zu weit unter deinem Bedarf
    [fat_release] Weniger Essen kostet dich Muskeln statt Fett
    [fat_release_later] Weniger Essen kostet dich später Muskeln statt Fett
    [energy_availability] Weniger Essen ließe neben dem Training zu wenig Energie
    [protein_and_fat] In weniger Essen passen dein Eiweiß und Fett nicht
    [least_intake] Weniger Essen läge unter der sicheren Untergrenze
    [resting_energy] Weniger Essen läge unter deinem Ruheumsatz
    [history_unknown] Deine früheren Diäten sind nicht bekannt
    [fat_unmeasured] Dein Körperfett ist nicht gemessen
    [fat_at_end] Am Ende hättest du zu wenig Körperfett
    [body_mass_index_at_end] Am Ende wärst du untergewichtig
    [weekly_loss] Du würdest zu schnell abnehmen
    [availability_at_end] Die letzten Tage ließen zu wenig Energie übrig
    [least_intake_at_end] Die letzten Tage lägen unter der sicheren Untergrenze
    [logged_loss] Dein Protokoll zeigt schon einen schnellen Verlust
    [body_of_that_day] Bis dahin braucht dein Körper mehr
    [whole_phase] Die Phase im Ganzen wäre nicht sicher
   *[this_person] Ein Defizit ist für dich jetzt nicht sicher
}
size-reason = { $because ->
    [body] So viel ist bei deinem Körperfett üblich
    [maintenance] { NUMBER($share_percent, maximumFractionDigits: 0) } % davon, mehr ist bei diesem Tempo nicht üblich
    [fat] So viel gibt dein Körperfett gut her
    [upper_end] die obere Grenze des Üblichen
    [recent_cut] weniger als üblich, denn deine letzte Diät ist noch nicht lange her
    [many_cuts] weniger als üblich, denn du hast schon oft Diät gehalten
    [no_training] weniger als üblich, denn du machst kein Krafttraining
    [not_kept] kleiner und dafür länger, weil ein größeres nicht eingehalten wurde
    [history_unknown] nicht mehr, solange deine früheren Diäten nicht bekannt sind
   *[fat_unmeasured] nicht mehr, solange dein Körperfett nicht gemessen ist
}
lever = { $lever ->
    [steps] { NUMBER($dose, maximumFractionDigits: 0) } Schritte mehr am Tag
   *[cycling] { NUMBER($dose, maximumFractionDigits: 0) } Minuten mehr Radfahren in der Woche
}
condition = { $condition ->
    [diabetes_treated] behandeltem Diabetes
    [kidney_disease] einer Nierenkrankheit
    [liver_disease] einer Leberkrankheit
    [heart_disease] einer Herzkrankheit
    [thyroid_uncontrolled] einer nicht eingestellten Schilddrüse
    [gout] Gicht
    [gallstones] Gallensteinen
    [bariatric_surgery] einer bariatrischen Operation
    [cancer] Krebs
    [unexplained_weight_loss] ungeklärtem Gewichtsverlust
    [absent_periods] ausbleibenden Perioden
    [low_testosterone_symptoms] Zeichen von Testosteronmangel
    [stress_fracture] einem Ermüdungsbruch
    [recent_surgery_or_injury] einer kürzlichen Operation oder Verletzung
    [phenylketonuria] Phenylketonurie
    [insulin_or_secretagogue] Insulin oder einem Sekretagogum
    [sglt2_inhibitor] einem SGLT2-Hemmer
    [glp1_agonist] einem GLP-1-Agonisten
    [diuretic] einem Diuretikum
    [lithium] Lithium
    [warfarin] Warfarin
   *[other] dieser Krankheit oder diesem Medikament
}
first-method = { $first ->
    [four_compartment] dem Vier-Kompartiment-Modell
    [dxa] DXA
    [air_displacement] Luftverdrängung
    [hydrostatic] Unterwasserwägung
    [skinfolds] Hautfalten
    [girths] Umfängen
    [bioimpedance] Bioimpedanz
    [visual] Augenmaß
   *[bmi_equation] der BMI-Gleichung
}
second-method = { $second ->
    [four_compartment] dem Vier-Kompartiment-Modell
    [dxa] DXA
    [air_displacement] Luftverdrängung
    [hydrostatic] Unterwasserwägung
    [skinfolds] Hautfalten
    [girths] Umfängen
    [bioimpedance] Bioimpedanz
    [visual] Augenmaß
   *[bmi_equation] der BMI-Gleichung
}
repeated-method = { $method ->
    [four_compartment] dem Vier-Kompartiment-Modell
    [dxa] DXA
    [air_displacement] Luftverdrängung
    [hydrostatic] Unterwasserwägung
    [skinfolds] Hautfalten
    [girths] Umfängen
    [bioimpedance] Bioimpedanz
    [visual] Augenmaß
   *[bmi_equation] der BMI-Gleichung
}
event = { $event ->
    [creatine_start] Beginn mit Kreatin
    [creatine_stop] Kreatin abgesetzt
    [illness] Krankheit
    [travel] Reise
    [injury] Verletzung
    [new_programme] neues Training
    [salty_days] salzige Tage
    [festive_days] Festtage
    [medicine] ein Medikament
   *[alcohol] Alkohol
}
pace = { $verdict ->
    [faster] schneller
   *[slower] langsamer
}

# Words of pictures.
picture-weight = Gewicht, kg
picture-scale = Waage
picture-tissue = ohne Wasser
picture-water = dazwischen Wasser
picture-interval = 80-%-Spanne
picture-energy = Energie, kcal am Tag
picture-intake = Essen
picture-maintenance = Bedarf
picture-changes = Änderung in jeder Phase, kg
picture-fat = Fett
picture-lean = Magergewebe
picture-carried = Wasser
picture-to = bis
picture-break = Pause
picture-phase = { phase-name }, { weeks }
picture-fat-loss = Etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett in { weeks }; die Waage zeigt { NUMBER($weight_kg, maximumFractionDigits: 1) } kg am { DATETIME($date, dateStyle: "long") }
picture-fat-loss-water = Etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett in { weeks }; die Waage zeigt { NUMBER($weight_kg, maximumFractionDigits: 1) } kg am { DATETIME($date, dateStyle: "long") }, { NUMBER($water_kg, maximumFractionDigits: 1) } kg des Rückgangs sind Wasser
picture-gain = Etwa { NUMBER($lean_kg, maximumFractionDigits: 1) } kg Magergewebe und { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett in { weeks }; die Waage zeigt { NUMBER($weight_kg, maximumFractionDigits: 1) } kg am { DATETIME($date, dateStyle: "long") }
picture-hold = { phase-name } über { weeks }; die Waage zeigt { NUMBER($weight_kg, maximumFractionDigits: 1) } kg am { DATETIME($date, dateStyle: "long") }
picture-path = Von { NUMBER($start_kg, maximumFractionDigits: 1) } kg am { DATETIME($start_date, dateStyle: "long") } auf { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }) am { DATETIME($end_date, dateStyle: "long") }; Körperfett von { NUMBER($now_percent, maximumFractionDigits: 1) } % ({ NUMBER($now_lower_percent, maximumFractionDigits: 1) } bis { NUMBER($now_upper_percent, maximumFractionDigits: 1) }) auf { NUMBER($fat_percent, maximumFractionDigits: 1) } % ({ NUMBER($fat_lower_percent, maximumFractionDigits: 1) } bis { NUMBER($fat_upper_percent, maximumFractionDigits: 1) }).
picture-path-spared = Von { NUMBER($start_kg, maximumFractionDigits: 1) } kg am { DATETIME($start_date, dateStyle: "long") } auf { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }) am { DATETIME($end_date, dateStyle: "long") }.
picture-ranges = In Klammern: Spannen von { NUMBER($percent, maximumFractionDigits: 0) } %.
picture-nearest-fat = Am nächsten: { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett in der verlangten Zeit.
picture-nearest-weeks = { $kind ->
    [mini_cut] Am nächsten: ein Mini-Cut von { weeks }.
    [cut] Am nächsten: eine Diätphase von { weeks }.
   *[gain] Am nächsten: ein Aufbau von { weeks }.
}
picture-nearest-deficit = Am nächsten: ein Defizit von höchstens { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag.
picture-phase-in-figures = { phase-name }, { DATETIME($start_date, dateStyle: "long") } bis { DATETIME($end_date, dateStyle: "long") }: { NUMBER($least_kcal, maximumFractionDigits: 0) } bis { NUMBER($most_kcal, maximumFractionDigits: 0) } kcal am Tag, Gewicht { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }), Fett { NUMBER($fat_kg, maximumFractionDigits: 1) } kg ({ NUMBER($fat_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($fat_upper_kg, maximumFractionDigits: 1) }), Magergewebe { NUMBER($lean_kg, maximumFractionDigits: 1) } kg ({ NUMBER($lean_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($lean_upper_kg, maximumFractionDigits: 1) }), Wasser und Darminhalt { NUMBER($carried_kg, maximumFractionDigits: 1) } kg ({ NUMBER($carried_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($carried_upper_kg, maximumFractionDigits: 1) }).
picture-phase-in-figures-spared = { phase-name }, { DATETIME($start_date, dateStyle: "long") } bis { DATETIME($end_date, dateStyle: "long") }: { NUMBER($least_kcal, maximumFractionDigits: 0) } bis { NUMBER($most_kcal, maximumFractionDigits: 0) } kcal am Tag, Gewicht { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }), Wasser und Darminhalt { NUMBER($carried_kg, maximumFractionDigits: 1) } kg ({ NUMBER($carried_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($carried_upper_kg, maximumFractionDigits: 1) }).
picture-body-fat-title = Körperfett, % des Gewichts
picture-body-fat = Körperfett
picture-band = Grenzen des gewählten Bereichs
picture-change = Änderung, kg, mit 80-%-Spannen
picture-row-weight = Gewicht
picture-row-tissue = Gewebe
picture-percent = { $value } %
picture-weighings = Wägungen
picture-outlier = Ausreißer
picture-smoothed = geglättet
picture-logged = protokolliertes Essen
picture-maintenance-logged = Bedarf laut Protokoll
picture-window = { $days ->
    [one] Letzter Tag
   *[other] Letzte { $days } Tage
}
picture-window-whole = Ganzes Protokoll, { days }
picture-more-of-kind = { $text } ({ $count } weitere dieser Art.)
picture-forecast = In { weeks }, am { DATETIME($date, dateStyle: "long") }, zeigt die Waage etwa { NUMBER($weight_kg, maximumFractionDigits: 1) } kg
picture-forecast-intake = Essen und Bedarf über { weeks }
picture-target-reached = Mit { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag ist das Ziel am { DATETIME($date, dateStyle: "long") } erreicht
picture-target-met = Mit { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag ist das Ziel erreicht
picture-target-missed = Keine sichere Energiemenge erreicht das Ziel bis dahin
picture-nearest-intake = Am nächsten: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag.
picture-nearest-date = Am nächsten: das Ziel am { DATETIME($date, dateStyle: "long") }.
picture-nearest-intake-date = Am nächsten: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag; das Ziel am { DATETIME($date, dateStyle: "long") }.
picture-forecast-path = Gewicht von { $start_weight } am { DATETIME($start_date, dateStyle: "long") } auf { $weight } am Ende des { DATETIME($end_date, dateStyle: "long") }, davon { $fat } Fett, Körperfett { $percent }.
picture-forecast-path-spared = Gewicht von { $start_weight } am { DATETIME($start_date, dateStyle: "long") } auf { $weight } am Ende des { DATETIME($end_date, dateStyle: "long") }.
picture-forecast-maintenance = Bedarf am Anfang: { $maintenance } am Tag.
picture-trend = { $way ->
    [down] Etwa { NUMBER($rate_kg, maximumFractionDigits: 2) } kg Fett und Magergewebe weniger pro Woche
    [up] Etwa { NUMBER($rate_kg, maximumFractionDigits: 2) } kg Fett und Magergewebe mehr pro Woche
   *[level] Fett und Magergewebe nehmen weder klar zu noch ab
}; etwa { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal am Tag halten das Gewicht
picture-trend-spared = { $way ->
    [down] Ohne Wasser etwa { NUMBER($rate_kg, maximumFractionDigits: 2) } kg weniger pro Woche
    [up] Ohne Wasser etwa { NUMBER($rate_kg, maximumFractionDigits: 2) } kg mehr pro Woche
   *[level] Ohne Wasser nimmst du weder klar zu noch ab
}; etwa { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal am Tag halten das Gewicht
picture-trend-urgent = { $way ->
    [down] Ohne Wasser etwa { NUMBER($rate_kg, maximumFractionDigits: 2) } kg weniger pro Woche
    [up] Ohne Wasser etwa { NUMBER($rate_kg, maximumFractionDigits: 2) } kg mehr pro Woche
   *[level] Ohne Wasser nimmst du weder klar zu noch ab
}
picture-trend-early = Noch zu wenige Daten für eine Richtung
picture-trend-early-days = Noch zu wenige Daten für eine Richtung: Es braucht etwa { more-days }
picture-trend-log = Gewichtsprotokoll vom { DATETIME($start_date, dateStyle: "long") } bis zum { DATETIME($end_date, dateStyle: "long") }.
picture-trend-day = Gewichtsprotokoll vom { DATETIME($date, dateStyle: "long") }.
picture-trend-smoothed = Geglättetes Gewicht von { $start_weight } auf { $weight }. Das Gewebe ändert sich jetzt um { $rate } pro Woche.
picture-trend-maintenance = Bedarf laut Protokoll: { $maintenance } am Tag.
picture-trend-change = Über { days }: Gewicht { $weight }, Gewebe { $tissue }, Wasser und Darminhalt { $carried }.
picture-trend-composition = Vom Gewebe: Fett { $fat }, Magergewebe { $lean }.
picture-cuts = { $cuts ->
    [0] ohne Diätphase
    [one] mit 1 Diätphase
   *[other] mit { $cuts } Diätphasen
}
picture-season = Magergewebe { $lean } und Fett { $fat } in { weeks } { picture-cuts }
picture-season-changes = Magergewebe { $lean }, Fett { $fat }; { days } im Defizit.
picture-season-path = Gewicht von { $start_weight } am { DATETIME($start_date, dateStyle: "long") } auf { $weight } am Ende des { DATETIME($end_date, dateStyle: "long") }, Körperfett von { $now_percent } auf { $percent }, { $peak_percent } am Ende der höchsten Woche.
picture-season-path-spared = { picture-forecast-path-spared }
picture-season-total = Änderung über die Saison, kg
picture-limit = { $limit ->
    [weeks_above_band] Nicht eingehalten: Wochen über dem Bereich, { $found } statt höchstens { $allowed }.
    [final_fat_fraction] Nicht eingehalten: Körperfett am Ende, { $found } statt höchstens { $allowed }.
   *[event_fat_fraction] Nicht eingehalten: Körperfett zu einem Anlass, { $found } über dem gewünschten.
}
picture-limit-dieting = Nicht eingehalten: Wochen im Defizit, { $found } statt höchstens { $allowed }.
picture-season-phase = { phase-name }, { DATETIME($start_date, dateStyle: "long") } bis { DATETIME($end_date, dateStyle: "long") }: Gewicht { $weight }, Fett { $fat }, Magergewebe { $lean }.
picture-season-phase-spared = { phase-name }, { DATETIME($start_date, dateStyle: "long") } bis { DATETIME($end_date, dateStyle: "long") }: Gewicht { $weight }.
picture-sign = { phase-name }: { $text }
strategy-name = { $strategy ->
    [slow_gain_rare_mini_cuts] Langsamer Aufbau, selten Mini-Cuts
    [fast_gain_long_cut] Schneller Aufbau, eine lange Diätphase
    [fast_gain_repeated_mini_cuts] Schneller Aufbau, immer wieder Mini-Cuts
    [slow_gain_no_cut] Langsamer Aufbau, keine Diätphase
   *[own] { $strategy }
}
picture-past = { $past ->
    [yes] , über einer Grenze
   *[no] {""}
}
picture-comparison = Am meisten Magergewebe in { weeks }: { strategy-name }
picture-comparison-one = In { weeks }: Magergewebe { $lean }, Fett { $fat }
picture-comparison-one-spared = In { weeks }: Magergewebe { $lean }
picture-most-lean = Am meisten Magergewebe: „{ strategy-name }“, { $value }{ picture-past }.
picture-least-fat = Am wenigsten Fett dazu: „{ strategy-name }“, { $value }{ picture-past }.
picture-odds = „{ strategy-name }“ bringt mit einer Wahrscheinlichkeit von { $percent } mehr Magergewebe als „{ $rival }“.
picture-odds-unclear = Kein klarer Unterschied: „{ strategy-name }“ bringt mit einer Wahrscheinlichkeit von { $percent } mehr Magergewebe als „{ $rival }“.
picture-draws = Mediane aus { $draws } Ziehungen dessen, was unsicher ist.
picture-strategy-in-figures = „{ strategy-name }“: Magergewebe { $lean }, Fett { $fat }, höchstes Körperfett { $percent }, Wochen über dem Bereich { $above }, Tage im Defizit { $dieting }.
picture-strategy-in-figures-spared = „{ strategy-name }“: Magergewebe { $lean }, Tage im Defizit { $dieting }.
picture-lean-gained = Magergewebe dazu, kg
picture-fat-gained = Fett dazu, kg
picture-peak = Höchstes Körperfett, %
picture-weeks-above = Wochen über dem Bereich
picture-days-dieting = Tage im Defizit
picture-median = Median und 80-%-Spanne
picture-limit-broken = eine Grenze ist nicht eingehalten
picture-limit-not-kept = Eine Grenze ist nicht eingehalten.

# Wörter der Dokumente: Kalender, Übersichten, und was sie teilen.
document-plan = Plan ab { DATETIME($date, dateStyle: "long") }
document-season = Saison ab { DATETIME($date, dateStyle: "long") }, { weeks }
document-start = Bedarf { $maintenance } am Tag, Körperfett { $fat }.
document-start-spared = Bedarf { $maintenance } am Tag.
document-cautions = Bitte beachten
document-why = Warum
document-phases = Phasen
document-intake = Essen
document-intake-from-today = Ab heute: { $intake } kcal
document-days = Tag für Tag
document-forecast = Vorhersage
document-sizes = Andere Größen und ihr Preis
document-levers = Mehr Bewegung, und was sie bringt
document-rules = Neben einfachen Regeln
document-limits = Grenzen
document-in-all = Zusammen
document-trade-off = Was Wochen über dem Bereich bringen
document-trade-off-end = Was mehr Körperfett am Ende bringt
document-phase-from = { phase-name } ab { DATETIME($date, dateStyle: "long") }
document-carried-means = Wasser: Glykogen, Wasser und Darminhalt. Sie gehen und kommen mit dem Essen.
document-column = { $column ->
    [phase] Phase
    [from] ab
    [to] bis
    [weeks] Wochen
    [week] Woche
    [weight] Gewicht
    [carried] Wasser
    [kcal_a_day] kcal am Tag
    [kcal] kcal
    [protein_g] Eiweiß g
    [carbohydrate_g] Kohlenhydrate g
    [fat_g] Fett g
    [fibre_g] Ballaststoffe g
    [alcohol_g] Alkohol g
    [day] Tag
    [training] Training
    [meals_g] Eiweiß je Mahlzeit, g
    [at_the_end_of] am Ende des
    [weight_kg] Gewicht kg
    [balance] Energiebilanz kcal am Tag
    [size] Größe
    [intake] Essen kcal
    [rate] % des Gewichts pro Woche
    [rails] gewarnt vor
    [activity] Bewegung
    [burnt] verbraucht kcal am Tag
    [counts] zählt kcal am Tag
    [use] Nutzung
    [availability] bleibt dem Körper, kcal/kg
    [expected] erwartet
    [days_dieting] Tage im Defizit
    [strategy] Strategie
   *[what] was
}
document-column-of-tissue = { $column ->
    [fat] Fett
    [lean] Magergewebe
    [fat_kg] Fett kg
    [lean_kg] Magergewebe kg
    [weeks_above] Wochen über dem Bereich
   *[fat_percent] Körperfett %
}
document-element = { $element ->
    [easing_in] sanfter Einstieg
   *[break] Pause
}
document-day-kind = { $kind ->
    [higher_carbohydrate] mehr Kohlenhydrate
   *[lower_carbohydrate] weniger Kohlenhydrate
}, { $days ->
    [one] an einem Tag der Woche
   *[other] an { $days } Tagen der Woche
}
document-size = { $size ->
    [gentle] sanft
    [steady] gleichmäßig
    [brisk] zügig
    [own] wie verlangt oder errechnet
   *[largest] das größte sichere
}
document-size-planned = { $size }, geplant
document-rail = { $rail ->
    [age] dem Alter
    [pregnancy_lactation] Schwangerschaft oder Stillzeit
    [eating_disorder] einer Essstörung
    [medical] einer Krankheit oder einem Medikament
    [screening_unanswered] offenen Gesundheitsfragen
    [bmi] nahem Untergewicht
    [body_fat] wenig Körperfett
    [deficit_share] einem großen Teil des Bedarfs
    [fat_supply] hohem Anspruch ans Körperfett
    [tissue_loss] schnellem Verlust
    [logged_loss] schnellem Verlust im Protokoll
    [energy_availability] wenig Energie neben dem Training
    [intake_floor] wenig Essen
    [protein] der Eiweißmenge
    [dietary_fat] wenig Fett im Essen
    [carbohydrate] wenig Kohlenhydraten
    [gain_rate] schneller Zunahme
    [cut_history] früheren Diätphasen
   *[other] einer weiteren Grenze
}
document-expected = Zu erwarten: Gewicht { $weight }, Fett { $fat }, Magergewebe { $lean }, Wasser { $carried }.
document-expected-spared = Zu erwarten: Gewicht { $weight }, Wasser { $carried }.
document-expected-tissue = Zu erwarten: Gewicht { $weight }, Fett { $fat }, Magergewebe { $lean }.
document-expected-tissue-spared = Zu erwarten: Gewicht { $weight }.
document-eaten = { $intake } kcal am Tag: Eiweiß { $protein } g, Kohlenhydrate { $carbohydrate } g, Fett { $fat } g, Ballaststoffe { $fibre } g
document-eaten-until = { document-eaten }, bis { DATETIME($date, dateStyle: "long") }.
document-eaten-for = { document-eaten }, { weeks } lang.
document-day-kind-eaten = { document-day-kind }: { $intake } kcal, Eiweiß { $protein } g, Kohlenhydrate { $carbohydrate } g, Fett { $fat } g.
document-day = { weekday-name }: { $intake } kcal, Eiweiß { $protein } g ({ $meals }), Kohlenhydrate { $carbohydrate } g, Fett { $fat } g
document-day-training = , { $minutes } min Training
document-day-alcohol = , darin { $alcohol } g Alkohol
document-training = { $minutes } min, { $kcal } kcal
document-lever = { lever }
document-use = { $use ->
    [instead] dafür mehr essen
   *[together] essen wie geplant
}
document-not-safe = nicht sicher
document-availability = { $observed } (wie geplant { $planned })
document-rule-static = Mit 7.700 kcal je Kilogramm und gleichem Defizit: { $fat } Fett.
document-rule-quoted = Oft genannt: { $fat } Fett in diesen Wochen und { $drop } auf der Waage in den ersten Tagen. Hier erwartet: { $forecast } in der ersten Woche.
document-strategy-gain = Aufbau mit { $surplus } kcal Überschuss am Tag.
document-strategy-no-cut = Keine Diätphase.
document-strategy-uncut = Der Aufbau endet bei { $starts } Körperfett, ohne Diätphase.
document-strategy-cut = Eine Diätphase beginnt bei { $starts } Körperfett und endet bei { $ends }.
document-strategy-deficit = Ihr Defizit beträgt { $deficit } kcal am Tag.
document-strategy-longest = Sie dauert höchstens { weeks }.
document-strategy-maintenance = Danach wird gehalten, mindestens { weeks }.
document-total = { $total ->
    [dieting] Tage im Defizit
   *[cuts] Diätphasen
}
document-total-of-tissue = { $total ->
    [lean] Magergewebe dazu
    [fat] Fett dazu
   *[end] Körperfett am Ende
}
document-peak = höchstes Körperfett, am { DATETIME($date, dateStyle: "long") }
document-above-band = Wochen über dem Bereich ({ $band })

## member

NOT_MEDICAL_ADVICE = Das ist Information, kein ärztlicher Rat. Sprich mit einer Ärztin, einem Arzt oder einer Ernährungsfachkraft, bevor du deine Ernährung umstellst; örtliche Vorschriften gehen vor.
FAT_FROM_BMI = Dein Körperfett ist aus Größe und Gewicht geschätzt. Bei Muskulösen ist das zu hoch: Lass es messen, bevor du dich darauf verlässt.
ON_LOGGING_SCALE = Dieser Bedarf passt zu deinem Protokoll: Schreibst du weniger auf, als du isst, soll genau diese Menge darin stehen.
ON_LOGGING_SCALE_URGENT = Dieser Bedarf passt zu deinem Protokoll. Er ist eine Schätzung und keine Menge, die du essen sollst: Die nennt dir die Arztpraxis.
TWO_SEXES = Gerechnet ist mit den Formeln beider Geschlechter: Die Spanne deckt beide ab, und die strengeren Grenzen gelten.
FROM_EQUATIONS = Das stammt allein aus Formeln, denn noch sagt kein Essprotokoll mehr. Am genauesten wird es mit vier Wochen Gewicht und Essen im Protokoll.
MAINTENANCE_BY_WEIGHT = Du protokollierst kaum Essen. Dein Bedarf folgt deshalb daraus, wie dein Gewicht auf die Vorgaben reagiert hat. Mit Essensprotokoll wird er genauer.

# Ablehnungen, jede mit der Stelle, die hilft.
REFUSED_LOWER_DAYS = Ein Tag, an dem du weniger isst als an anderen, ist ein Tag im Defizit. Derselbe Plan geht mit lauter gleichen Tagen.
REFUSED_UNDER_AGE = Unter { NUMBER($limit_years, maximumFractionDigits: 0) } Jahren planen wir kein Energiedefizit. Sprich bitte zuerst mit einer Ärztin, einem Arzt oder einer Ernährungsfachkraft; Bedarf und Trends siehst du weiter.
REFUSED_OLDER_WITHOUT_CLEARANCE = Ab { NUMBER($limit_years, maximumFractionDigits: 0) } Jahren greift eine Diät leichter Muskeln und Knochen an. Hol dir bitte zuerst eine ärztliche Freigabe; Bedarf und Trends siehst du weiter.
REFUSED_PREGNANCY = In der Schwangerschaft planen wir kein Energiedefizit. Sprich bitte mit deiner Hebamme oder Frauenarztpraxis über Essen und Gewicht; Bedarf und Trends siehst du weiter.
REFUSED_BREASTFEEDING = In der Stillzeit planen wir kein Energiedefizit. Sprich bitte zuerst mit deiner Hebamme, einer Ärztin oder einem Arzt; Bedarf und Trends siehst du weiter.
REFUSED_EATING_DISORDER = Mit einer Essstörung, heute oder früher, planen wir weder Energiedefizit noch Körperziel. Eine Beratungsstelle für Essstörungen oder deine Arztpraxis hilft dir weiter.
REFUSED_DOUBT = Du warst dir wegen einer Essstörung unsicher. Kläre das bitte zuerst mit einer Arztpraxis oder einer Beratungsstelle; bis dahin empfehlen wir kein Defizit.
REFUSED_MEDICAL = Mit { condition }{ $others ->
    [0] {""}
    [one] {" "}und einer weiteren Angabe
   *[other] {" "}und { $others } weiteren Angaben
} braucht ein Defizit eine Freigabe. Sprich bitte zuerst mit einer Arztpraxis oder Ernährungsfachkraft.
REFUSED_BMI = Bei einem Body-Mass-Index von { NUMBER($bmi, maximumFractionDigits: 2) } (Untergewicht beginnt unter { NUMBER($limit, maximumFractionDigits: 1) }) planen wir kein Defizit. Sprich bitte mit einer Ärztin, einem Arzt oder einer Ernährungsfachkraft.
REFUSED_REFEEDING = Bei deinem Gewicht kann es gefährlich sein, unbeaufsichtigt mehr zu essen. Wir nennen keine Menge. Geh bitte noch heute in eine Arztpraxis; es eilt.
REFUSED_FAT_TARGET = Für dich planen wir kein Körperfettziel, auch nicht im Aufbau. Sprich bitte zuerst mit einer Ärztin, einem Arzt oder einer Ernährungsfachkraft.
REFUSED_BAND = Für dich planen wir kein Körperfettziel. Lass bitte den Bereich und die Ziele für Anlässe weg.
REFUSED_UNANSWERED = Bevor die Gesundheitsfragen beantwortet sind, planen wir weder Defizit noch Aufbau. Was wir nicht wissen, gilt nie als unbedenklich.
REFUSED_LOGGED_LOSS = Laut Protokoll verlierst du { NUMBER($percent, maximumFractionDigits: 2) } % je Woche, mehr als { NUMBER($limit_percent, maximumFractionDigits: 1) } %: kein weiteres Defizit. Iss mehr; war das nicht gewollt, such ärztlichen Rat.
UNDERWEIGHT = Für deine Größe wiegst du zu wenig. Von hier führt der Weg über langsames Zunehmen: Sprich darüber bitte mit einer Arztpraxis oder Ernährungsfachkraft.
UNDERWEIGHT_AHEAD = So wie du jetzt isst, wiegst du bald zu wenig für deine Größe. Iss mindestens, was geplant ist, oder geh in eine Arztpraxis.
REFUSED_BODY_FAT = { $speaks ->
    [yes] Mit { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett planen wir kein Defizit: Die sichere Grenze liegt bei { NUMBER($limit_percent, maximumFractionDigits: 1) } %.
   *[no] Dein Körper hat keine Reserven für ein Defizit.
} Sprich bitte mit einer Ärztin, einem Arzt oder einer Ernährungsfachkraft.
REFUSED_LOSS = Damit würdest du je Woche { NUMBER($percent, maximumFractionDigits: 2) } % deines Gewichts verlieren, mehr als { NUMBER($limit_percent, maximumFractionDigits: 2) } %: Iss mehr.
REFUSED_END_BODY_FAT = { $speaks ->
    [yes] Das würde bei { NUMBER($fat_percent, maximumFractionDigits: 2) } % Körperfett enden, unter der sicheren Grenze von { NUMBER($limit_percent, maximumFractionDigits: 1) } %: Mach es kürzer oder iss mehr.
   *[no] Das ließe deinem Körper keine Reserven: Mach es kürzer oder iss mehr.
}
REFUSED_END_BMI = Das würde bei einem Body-Mass-Index von { NUMBER($bmi, maximumFractionDigits: 2) } enden; unter { NUMBER($limit, maximumFractionDigits: 1) } beginnt Untergewicht. Mach es kürzer oder iss mehr.
REFUSED_GAIN_RATE = Damit nimmst du je Woche { NUMBER($percent, maximumFractionDigits: 3) } % zu. Bei deiner Trainingserfahrung bauen mehr als { NUMBER($limit_percent, maximumFractionDigits: 2) } % nicht mehr Muskeln auf.
REFUSED_TARGET = Ein Ziel von { NUMBER($fat_percent, maximumFractionDigits: 2) } % Körperfett liegt unter der sicheren Grenze von { NUMBER($limit_percent, maximumFractionDigits: 1) } %: Setze es höher.
REFUSED_DEFICIT = Ein Defizit von { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag ist zu groß: { why }. Iss mindestens { NUMBER($least_intake_kcal, maximumFractionDigits: 0) }.
REFUSED_HELD = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag sind außerhalb eines Defizits zu wenig. Iss mindestens { NUMBER($least_intake_kcal, maximumFractionDigits: 0) }; schaffst du das nicht, sprich mit einer Arztpraxis.
REFUSED_PROTEIN = { NUMBER($observed, maximumFractionDigits: 2) } Gramm Eiweiß je Kilogramm sind weniger als die { NUMBER($limit, maximumFractionDigits: 2) }, die ein Defizit braucht: Plane mehr ein.
REFUSED_CUT_WITHOUT_READING = Wann in einer Saison eine Diätphase beginnt, bestimmt dein Körperfett, und zwar ein gemessenes: Lass es zuerst messen.
SEE_MIDWIFE = In der Schwangerschaft senken wir deine Energiemenge nicht. Sprich mit deiner Hebamme oder Frauenarztpraxis über Essen und Gewicht.
WEIGHT_RISES_IN_PREGNANCY = In der Schwangerschaft soll dein Gewicht steigen. Was wächst, steckt in den Gewichten hier nicht: Deine Hebamme oder Frauenarztpraxis begleitet dich.
SEE_AFTER_BIRTH = Solange du stillst, senken wir deine Energiemenge nicht: Sprich mit deiner Hebamme oder deiner Arztpraxis.
SEE_EATING_DISORDER_SERVICE = Wir senken deine Energiemenge nicht. Eine Beratungsstelle für Essstörungen oder deine Arztpraxis hilft bei Fragen zu Essen und Gewicht.
SEE_FOR_MINORS = Unter 18 senken wir deine Energiemenge nicht: Sprich mit einer Kinder- und Jugendarztpraxis über dein Gewicht.

# Was begrenzt oder angehoben wird.
CAPPED_UNANSWERED = Der Aufbau nach der Erhaltung fällt weg, bis die Gesundheitsfragen beantwortet sind.
CAPPED_PROTEIN_ROOM = Du bekommst { NUMBER($given, maximumFractionDigits: 1) } statt { NUMBER($asked, maximumFractionDigits: 1) } Gramm Eiweiß je Kilogramm: Neben dem nötigen Fett ist für mehr kein Platz.
CAPPED_DEFICIT = Das Defizit bleibt bei { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag: { why }.
CAPPED_DEFICIT_LATER = Später in der Diätphase beträgt das Defizit nur { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag: { why }.
CAPPED_DEFICIT_FOR_BMI = Das Defizit bleibt bei { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag, sonst wärst du am Ende untergewichtig. { NUMBER($asked_kcal, maximumFractionDigits: 0) } kcal gehen höchstens { weeks } lang.
CAPPED_PROTEIN = Dein Eiweiß steigt auf { NUMBER($limit, maximumFractionDigits: 2) } Gramm je Kilogramm, das Mindeste in einem Defizit.
CAPPED_GAIN_RATE = Dein Überschuss bleibt bei { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal am Tag: Mehr als { NUMBER($percent, maximumFractionDigits: 2) } % Zunahme je Woche bauen nicht mehr Muskeln auf.
CAPPED_GAIN_RATE_AT_FIRST = Dein Überschuss ist zuerst { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal am Tag: Mehr als { NUMBER($percent, maximumFractionDigits: 2) } % Zunahme je Woche bauen nicht mehr Muskeln auf.
CAPPED_HISTORY_UNKNOWN = Deine früheren Diäten sind nicht bekannt, darum bleibt das Defizit bei den üblichen { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag.
NO_SAFE_DEFICIT = Kein Defizit, das etwas bringt, ist für dich zurzeit sicher: { why }.
MEASURE_FIRST = Dein Körperfett ist nicht gemessen, darum sind höchstens { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal Defizit am Tag drin. Für mehr lass es zuerst messen.
RATIO_DECIDES = Hier entscheidet dein Protokoll: Es enthält etwa { NUMBER($percent, maximumFractionDigits: 0) } % von dem, was du isst. Wiege eine Woche lang alles Essen, dann wissen wir mehr.
RAISED_TO_FLOOR = Deine Energiemenge steigt auf { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag, das Mindeste für deinen Körper außerhalb eines Defizits.

# Worauf zu achten ist.
WARNED_YOUNG_ADULT = Mit 18 oder 19 reift dein Körper vielleicht noch: Halte das Defizit klein und kurz.
WARNED_EATING_DISORDER_DOUBT = Du warst dir wegen einer Essstörung unsicher. Machen dir Essen oder Gewicht Sorgen, sprich zuerst mit einer Arztpraxis; wird es schlimmer, brich ab.
WARNED_LOGGED_LOSS = Laut Protokoll verlierst du { NUMBER($percent, maximumFractionDigits: 1) } % deines Gewichts je Woche. Erklärt das keine Diät, iss mehr und lass es in einer Arztpraxis abklären.
WARNED_EATEN_FLOOR = { $periods ->
    [no] Dein Protokoll zeigt etwa { NUMBER($eaten_kcal, maximumFractionDigits: 0) } kcal am Tag; iss mindestens { NUMBER($limit_kcal, maximumFractionDigits: 0) }. Bei gedrückter Stimmung oder Essanfällen such ärztlichen Rat.
   *[yes] Dein Protokoll zeigt etwa { NUMBER($eaten_kcal, maximumFractionDigits: 0) } kcal am Tag; iss mindestens { NUMBER($limit_kcal, maximumFractionDigits: 0) }. Bei gedrückter Stimmung, Essanfällen oder ausgebliebener Periode such ärztlichen Rat.
}
WARNED_EATEN_AVAILABILITY = { $periods ->
    [no] Iss mehr: Laut Protokoll bleibt neben dem Training zu wenig Energie. Bei gedrückter Stimmung oder Essanfällen such ärztlichen Rat.
   *[yes] Iss mehr: Laut Protokoll bleibt neben dem Training zu wenig Energie. Bei gedrückter Stimmung, Essanfällen oder ausgebliebener Periode such ärztlichen Rat.
}
WARNED_LOGGED_LOSS_URGENT = Laut Protokoll verlierst du { NUMBER($percent, maximumFractionDigits: 1) } % deines Gewichts je Woche. Sag das in der Arztpraxis.
WARNED_EATEN_FLOOR_URGENT = Dein Protokoll zeigt etwa { NUMBER($eaten_kcal, maximumFractionDigits: 0) } kcal am Tag, viel zu wenig. Sag das in der Arztpraxis.
WARNED_EATEN_AVAILABILITY_URGENT = Laut Protokoll bleibt neben dem Training zu wenig Energie. Sag das in der Arztpraxis, und wie du trainierst.
WARNED_HISTORY_UNKNOWN = Deine früheren Diäten sind nicht bekannt, darum ist das Defizit höchstens so groß wie üblich.
WARNED_HISTORY_NOT_TOLD = Deine früheren Diäten sind nicht bekannt. Bleib so lange bei höchstens { NUMBER($limit_kcal, maximumFractionDigits: 0) } kcal Defizit am Tag.
WARNED_BMI = Ein Body-Mass-Index von { NUMBER($bmi, maximumFractionDigits: 1) } liegt nahe am Untergewicht: Halte die Phase kurz.
WARNED_BODY_FAT = Die Phase endet bei { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett, so schlank, wie es die wenigsten gut halten können.
WARNED_TARGET = Ein Ziel von { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett ist so schlank, wie es die wenigsten gut halten können.
WARNED_DEFICIT_SHARE = Das Defizit macht { NUMBER($share_percent, maximumFractionDigits: 0) } % deines Bedarfs aus: Rechne mit Hunger und Müdigkeit.
WARNED_DAY_DEFICIT_SHARE = An deinen knappsten Tagen isst du { NUMBER($share_percent, maximumFractionDigits: 0) } % weniger, als du verbrauchst: Rechne dann mit Hunger und Müdigkeit.
WARNED_LARGE_DEFICIT = { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag sind mehr als die { NUMBER($usual_kcal, maximumFractionDigits: 0) }, bis zu denen Mini-Cuts meist gehen: Achte auf Hunger, Schlaf und Kraft.
WARNED_FAT_SUPPLY = Das Defizit verlangt jedem Kilogramm Körperfett { NUMBER($observed, maximumFractionDigits: 1) } kcal am Tag ab. Über { NUMBER($limit, maximumFractionDigits: 1) } verlierst du vielleicht mehr Muskeln.
WARNED_DAY_FAT_SUPPLY = An deinen knappsten Tagen müsste jedes Kilogramm Körperfett { NUMBER($observed, maximumFractionDigits: 1) } kcal liefern. Über { NUMBER($limit, maximumFractionDigits: 1) } verlierst du vielleicht mehr Muskeln.
WARNED_DAY_AVAILABILITY = { $periods ->
    [no] An deinen knappsten Tagen bleibt neben dem Training wenig Energie. Achte auf Schlaf, Stimmung und Libido; ändern sie sich, iss mehr.
   *[yes] An deinen knappsten Tagen bleibt neben dem Training wenig Energie. Achte auf Schlaf, Stimmung, Libido und Zyklus; ändern sie sich, iss mehr.
}
WARNED_LOSS = Geplant sind { NUMBER($percent, maximumFractionDigits: 2) } % Gewichtsverlust je Woche. Das ist schnell: Achte auf deine Kraft.
WARNED_AVAILABILITY = { $periods ->
    [no] Neben dem Training bleibt wenig Energie, das geht nur einige Wochen. Achte auf Schlaf, Stimmung und Libido; ändern sie sich, brich ab.
   *[yes] Neben dem Training bleibt wenig Energie, das geht nur einige Wochen. Achte auf Schlaf, Stimmung, Libido und Zyklus; ändern sie sich, brich ab.
}
WARNED_UNDER_RESTING = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag sind weniger als dein Ruheumsatz ({ NUMBER($resting_kcal, maximumFractionDigits: 0) }): nur in einem Mini-Cut vertretbar.
WARNED_DAY_UNDER_RESTING = An deinen knappsten Tagen sind { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal weniger als dein Ruheumsatz ({ NUMBER($resting_kcal, maximumFractionDigits: 0) }): Halte solche Tage selten.
WARNED_KIDNEY_PROTEIN = Viel Eiweiß bei einer Nierenkrankheit nur, wenn deine Arztpraxis zustimmt.
WARNED_DIETARY_FAT = Fett macht nur { NUMBER($share_percent, maximumFractionDigits: 0) } % deines Essens aus. Auf Dauer ist das zu wenig.
WARNED_DAY_DIETARY_FAT = An manchen Tagen macht Fett nur { NUMBER($share_percent, maximumFractionDigits: 0) } % deines Essens aus. Weniger sollte es nicht sein.
WARNED_CARBOHYDRATE = Du isst { NUMBER($carbohydrate_g, maximumFractionDigits: 0) } Gramm Kohlenhydrate am Tag, weniger als die empfohlenen { NUMBER($limit_g, maximumFractionDigits: 0) }: Das Training kann sich schwerer anfühlen.
WARNED_GAIN_RATE = { NUMBER($percent, maximumFractionDigits: 2) } % Zunahme je Woche sind für deine Trainingserfahrung schnell: Langsamer baust du etwa gleich viel Muskel auf.
WARNED_CUTS_A_YEAR = Das wäre Diätphase Nummer { NUMBER($cuts, maximumFractionDigits: 0) } in zwölf Monaten. Diäten kosten Trainingszeit; wer langsamer aufbaut, braucht weniger davon.
WARNED_RECENT_CUT = { $weeks ->
    [0] Deine letzte Diätphase ist gerade erst zu Ende.
    [one] Deine letzte Diätphase ist erst 1 Woche her.
   *[other] Deine letzte Diätphase ist erst { NUMBER($weeks, maximumFractionDigits: 0) } Wochen her.
} Meist ist es besser, { NUMBER($limit_weeks, maximumFractionDigits: 0) } Wochen abzuwarten.
BODY_FAT_AT_MINIMUM = { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett sind so schlank, wie es sicher ist (Grenze etwa { NUMBER($limit_percent, maximumFractionDigits: 1) } %). Nimm nicht weiter ab; sprich mit einer Arztpraxis.
BODY_FAT_LOW = { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett liegen unter { NUMBER($limit_percent, maximumFractionDigits: 1) } %, so schlank, wie es die wenigsten gut halten können.
UNDER_AGE_NO_TARGET = Unter { NUMBER($limit_years, maximumFractionDigits: 0) } Jahren ist das nur eine Schätzung, aus der kein Ziel folgt. Sprich mit einer Arztpraxis über Wachstum und Gewicht.
FAT_FREE_MASS_INDEX_UNUSUAL = So viel Muskulatur haben bei dieser Größe nur wenige. Prüfe das Gewicht (Kilogramm oder Pfund?), die Größe und die Messung.
WEIGHT_IN_POUNDS = Gewicht und Größe ergeben einen Body-Mass-Index von { NUMBER($bmi, maximumFractionDigits: 1) }. Sieht das falsch aus, prüfe die Einheiten: Kilogramm, nicht Pfund, und Zentimeter.
MAINTENANCE_UNUSUAL = { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal am Tag sind das { NUMBER($times, maximumFractionDigits: 1) }-Fache des Ruheumsatzes, das halten wenige durch. Stimmen Aktivität und Angaben?
PAL_ABOVE_SUSTAINABLE = Deine Aktivität ergibt das { NUMBER($pal, maximumFractionDigits: 2) }-Fache des Ruheumsatzes; mehr als { NUMBER($limit, maximumFractionDigits: 2) } hält man kaum durch. Prüfe die Angaben.
BMI_OVERSTATES_WITH_MUSCLE = Größe und Gewicht unterscheiden Muskeln nicht von Fett: Bei Trainierten ergeben sie etwa { NUMBER($points, maximumFractionDigits: 1) } Punkte zu viel Körperfett.

# Ein Plan: warum jede Zahl so ist.
DEFICIT_CHOSEN = Du isst { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag weniger, als du jetzt verbrauchst: { size-reason }.
SIZE_OF_DEFICIT = { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag weniger: { weeks }, etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett und schlimmstenfalls { NUMBER($lean_kg, maximumFractionDigits: 1) } kg Magergewebe.
SIZE_OF_GAIN = { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal am Tag mehr: { weeks }, etwa { NUMBER($lean_kg, maximumFractionDigits: 1) } kg Magergewebe und { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett.
SIZE_OF_GAIN_SPARED = { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal am Tag mehr: { weeks }.
DEFICIT_ASKED = Du isst { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag weniger, als du jetzt verbrauchst, wie gewünscht.
GOAL_SMALL = Dein Ziel ist klein: In { weeks }, kürzer kann diese Phase nicht sein, reicht ein kleines Defizit.
GOAL_FITS_MINI_CUT = Ein Mini-Cut bringt dich in { weeks } ans Ziel, mit { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag weniger, als du jetzt verbrauchst.
DEFICIT_SOLVED = Mit { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag weniger, als du jetzt verbrauchst, verlierst du in { weeks } { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett.
WEEKS_SOLVED = Mit diesem Defizit dauert es { weeks }, bis { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett weg sind.
WEEKS_DEFAULT = Die Phase dauert { weeks }: die Mitte der üblichen zwei bis sechs, abzüglich dessen, was schon geschafft ist.
CUT_WEEKS_DEFAULT = Die Phase dauert { weeks }, weil weder ein Ziel noch eine Dauer angegeben war.
WEEKS_TO_EVENT = Die Phase dauert { weeks }, so lange sie vor deinem Termin kann.
FAT_SOLVED = Rechne mit etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett, die du mit diesem Defizit in { weeks } verlierst.
PLANNED_AS_KEPT = Bisher hast du etwa { NUMBER($percent, maximumFractionDigits: 0) } % der geplanten Defizite eingehalten: Rechne mit { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett in { weeks } statt mit { NUMBER($planned_kg, maximumFractionDigits: 1) } kg.
FORECAST_AS_KEPT = Bisher hast du etwa { NUMBER($percent, maximumFractionDigits: 0) } % der geplanten Defizite eingehalten. Mit mehr rechnet diese Vorhersage nicht.
FORECAST_AS_EATEN = Die Mitte gilt, wenn du genau so isst. Die Spanne rechnet auch damit, dass vom Defizit weniger gelingt, wie es üblich ist.
PLANNED_AS_EATEN = Gerechnet ist mit dem ganzen Plan. Üblich sind etwa { NUMBER($percent, maximumFractionDigits: 0) } % eines solchen Defizits: Derselbe Verlust würde { NUMBER($usual_weeks, maximumFractionDigits: 0) } Wochen dauern statt { weeks }.
SHRINKING_DEFICIT = Dein Körper verbraucht bald weniger, darum schrumpft das Defizit: von { NUMBER($first_kcal, maximumFractionDigits: 0) } kcal am Tag in der ersten vollen Woche auf { NUMBER($last_kcal, maximumFractionDigits: 0) } in der letzten.
PROTEIN_WHY = { NUMBER($protein_g_per_kg, maximumFractionDigits: 1) } Gramm Eiweiß je Kilogramm, zusammen mit Krafttraining, schützen im Defizit deine Muskeln.
NO_TRAINING = Mit weniger als zwei Einheiten Krafttraining je Woche verlierst du mehr Muskeln. Zwei sind der einfachste Schutz.
EASING_IN = { $weeks ->
    [one] In der ersten Woche gilt
   *[other] In den ersten { $weeks } Wochen gilt
} das halbe Defizit: Du hast weniger Hunger, und es dauert etwa um so viel länger.
MAINTENANCE_WHY = Nach der Diätphase hältst du mit { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal am Tag, { NUMBER($lower_kcal, maximumFractionDigits: 0) } weniger als vorher: Dein Körper ist kleiner und sparsamer.
MAINTENANCE_NOT_LOWER = Nach der Diätphase hältst du mit { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal am Tag. So bald nach viel mehr Essen verbraucht dein Körper nicht weniger als vorher.
REBOUND = Die Waage steigt um etwa { NUMBER($carried_kg, maximumFractionDigits: 1) } kg, weil Glykogen, Wasser und Nahrung im Darm zurückkommen. Das ist kein Fett.
SURPLUS_WHY = { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal Überschuss am Tag passen zu deiner Trainingserfahrung und deiner fettfreien Masse. Deine Energiemenge wird { every-weeks } neu gesetzt.
GAIN_RATE_EXPECTED = Rechne damit, im Monat etwa { NUMBER($percent_per_month, maximumFractionDigits: 1) } % deines Gewichts zuzunehmen, davon { NUMBER($lean_share, maximumFractionDigits: 0) } % Magergewebe.
GAIN_RATE_EXPECTED_SPARED = Rechne damit, im Monat etwa { NUMBER($percent_per_month, maximumFractionDigits: 1) } % deines Gewichts zuzunehmen.
RETURN_CHECKS = Ohne Wasser nimmst du etwa { NUMBER($rate_kg, maximumFractionDigits: 2) } kg je Woche zu. Prüfe am { DATETIME($first_date, dateStyle: "long") } und { DATETIME($second_date, dateStyle: "long") }: Beim Doppelten halbiere den Überschuss.
RETURN_CHECKS_SPARED = Ohne Wasser nimmst du etwa { NUMBER($rate_kg, maximumFractionDigits: 2) } kg je Woche zu. Prüfe am { DATETIME($first_date, dateStyle: "long") } und { DATETIME($second_date, dateStyle: "long") }: Beim Doppelten frag deine Arztpraxis.
CEILING_REACHED = Der Aufbau endet bei { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett, voraussichtlich um den { DATETIME($date, dateStyle: "long") }.
CEILING_NOT_REACHED = Der Aufbau würde bei { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett enden; in diesen Wochen kommst du voraussichtlich nicht dorthin.
END_AT_TARGET = Hör auf, sobald der Trend { NUMBER($fat_kg, maximumFractionDigits: 1) } kg weniger Fett zeigt, auch vor der letzten Woche.
END_AT_LIMIT = Hör spätestens nach { weeks } auf: Ein Mini-Cut soll kurz sein.
END_CUT_AT_LIMIT = Hör spätestens nach { weeks } auf, und halte dann erst einmal dein Gewicht.
END_ON_SIGNS = { $periods ->
    [no] Hör früher auf, wenn die Kraft in zwei Einheiten nacheinander nachlässt, bei schlechtem Schlaf, gedrückter Stimmung oder Essanfällen.
   *[yes] Hör früher auf, wenn die Kraft in zwei Einheiten nacheinander nachlässt, bei schlechtem Schlaf, gedrückter Stimmung, Essanfällen oder ausgebliebener Periode.
}
END_ON_FAST_LOSS = Iss mehr, wenn dein Gewicht zwei Wochen lang schneller fällt als { NUMBER($percent, maximumFractionDigits: 1) } % je Woche; das Wasser der ersten Woche zählt nicht.
TRAIN_IN_DEFICIT = Halte die Gewichte im Training hoch. Erholst du dich schlechter, mach zuerst weniger Sätze.
BREAKS_OFFERED = Du kannst Pausen wünschen: Alle paar Wochen eine Woche Erhaltung macht eine lange Diätphase leichter und kostet nur ihre Zeit.
TRAIN_IN_GAIN = Steigere zuerst Gewicht oder Wiederholungen, dann Sätze: Der Überschuss ist zum Trainieren da.
TRAIN_IN_HOLD = Trainiere weiter, so gut es geht: Mit genug Essen kommt die Kraft zurück. Bist du krank oder verletzt, erhol dich erst.
END_HOLD_ON_TREND = Plane vor dem Ende neu, wenn dein Gewicht weiter fällt oder nach zwei Wochen weiter steigt: Dann ist dein Bedarf ein anderer.
END_HOLD_ON_SIGNS = Frag vor dem Ende neu, wenn du dich unwohl fühlst oder den ganzen Tag Hunger hast.
WEIGH_DAILY = Wiege dich täglich unter gleichen Umständen, und urteile nach dem Mittel der Woche.
PLAN_PROVISIONAL = Dieser Plan ist vorläufig, er beruht auf Formeln. Wiege dich und protokolliere täglich, dann zählt ab dem { DATETIME($date, dateStyle: "long") } vor allem dein Protokoll.
WEIGH_DAILY_SPARED = Sprich mit der Arztpraxis, die dich betreut, darüber, wie oft du dich wiegst.
PLAN_PROVISIONAL_SPARED = Dieser Plan ist vorläufig, er beruht allein auf Formeln. Mit vier Wochen Protokoll ist er ab dem { DATETIME($date, dateStyle: "long") } genauer.
INFEASIBLE = Kein sicherer Plan schafft, was verlangt war. Stattdessen siehst du, was dem am nächsten kommt.
INFEASIBLE_NOTHING = Kein sicherer Plan schafft, was verlangt war, und zurzeit kommt auch keiner in die Nähe.
PAUSED = Zuerst hältst du { weeks } dein Gewicht; geplant ist die Phase für deinen Körper, wie er dann sein wird.
HELD_AT_CEILING = Dein Körperfett ist schon an der Obergrenze dieses Aufbaus, darum hältst du. Vor einem Aufbau kommt eine Fettabnahme.
HELD_AFTER_CUT = Auch nach dieser Fettabnahme liegt dein Körperfett an der Obergrenze des Aufbaus, darum hältst du. Davor kommt noch eine Fettabnahme.
HELD_FROM_CEILING = Ab dem { DATETIME($date, dateStyle: "long") } hältst du: Dann ist dein Körperfett an der Obergrenze dieses Aufbaus. Vor dem nächsten kommt eine Fettabnahme.
GAIN_TARGET_PAST_CEILING = Bei etwa { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ist dein Körperfett an der Obergrenze dieses Aufbaus: Nimm dieses Gewicht als Ziel, oder verlier vorher Fett.
GAIN_NOT_NOW = Einen Aufbau planen wir dir jetzt nicht: Iss so viel, wie du verbrauchst, und trainiere. Bei Sorgen frag eine Arztpraxis oder Ernährungsfachkraft.
GAIN_OVER = Ab dem { DATETIME($date, dateStyle: "long") } isst du so viel, wie du verbrauchst, und trainierst weiter: Dann reicht dieser Aufbau. Bei Sorgen frag eine Arztpraxis.
HELD_FROM_CEILING_SPARED = Ab dem { DATETIME($date, dateStyle: "long") } isst du so viel, wie du verbrauchst, und trainierst weiter. Bei Sorgen frag eine Arztpraxis oder Ernährungsfachkraft.
GAIN_TARGET_PAST_CEILING_SPARED = Dieser Aufbau geht bis etwa { NUMBER($weight_kg, maximumFractionDigits: 1) } kg und nicht weiter.
HOLD_WHY = { $moves ->
    [yes] Dein Körper bleibt, wie er ist, mit jetzt { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal am Tag und { NUMBER($last_kcal, maximumFractionDigits: 0) } in der letzten Woche.
   *[no] Mit { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal am Tag bleibt dein Körper, wie er ist.
}
HOLD_NEED = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag sind das Mindeste, was dein Körper in diesen Wochen braucht.
TRAINING_DAYS_MORE = An Trainingstagen isst du mehr, weil du mehr verbrauchst: bis zu { NUMBER($training_kcal, maximumFractionDigits: 0) } kcal. Ruhetage haben weniger, die Woche bleibt gleich.
TRAINING_DAYS_LIMITED = In der knappsten Woche bekommen Trainingstage { NUMBER($percent, maximumFractionDigits: 0) } % dessen, was Training verbraucht. An Ruhetagen gilt: { why }.
FLEXIBLE_DAYS_PAID = An deinen anderen Tagen isst du bis zu { NUMBER($paid_kcal, maximumFractionDigits: 0) } kcal weniger und gleichst so die freien aus. Die Woche bleibt gleich.
CAPPED_FLEXIBLE_DAYS = In der knappsten Woche passen { NUMBER($fits_kcal, maximumFractionDigits: 0) } von { NUMBER($asked_kcal, maximumFractionDigits: 0) } kcal in freie Tage. An anderen gilt: { why }.
HIGHER_DAYS_LOSE_NO_MORE = Tage mit mehr Essen machen die Woche leichter. Zusätzliches Fett verlierst du durch sie nicht.
ALCOHOL_COUNTED = Alkohol zählt wie Essen, mit 7,1 kcal je Gramm, und nährt keinen Muskel. Weniger davon ist immer gut.
MEALS_PROTEIN = In { meals } isst du je bis zu { NUMBER($protein_g, maximumFractionDigits: 0) } Gramm Eiweiß. Am meisten zählt, was der ganze Tag hat.
MEALS_FEWER = Weniger und größere Mahlzeiten bauen besser Muskeln auf: etwa { NUMBER($protein_g, maximumFractionDigits: 0) } Gramm Eiweiß in jeder von { meals }.
PLANT_PROTEIN = Du bekommst ein Zehntel mehr Eiweiß, weil Pflanzen etwas weniger liefern, was Muskeln brauchen. Soja, Bohnen und Getreide zusammen sind gut.
PROTEIN_REFERENCE = Dein Eiweiß ist für { NUMBER($reference_kg, maximumFractionDigits: 0) } kg gerechnet, den Teil deines Gewichts, der es braucht.
WEEK_BEYOND_PROFILE = Dieses Training verbraucht etwa { NUMBER($week_kcal, maximumFractionDigits: 0) } kcal am Tag, dein Profil rechnet mit { NUMBER($profile_kcal, maximumFractionDigits: 0) }. Ändere deine Aktivität, sonst bekommst du zu wenig.
FLEXIBLE_DAY_AFTER_PLAN = Dein freier Tag am { DATETIME($date, dateStyle: "long") } liegt nach dem Plan, der am { DATETIME($last_date, dateStyle: "long") } endet.
LEVER_BURNS = { lever } verbrauchen täglich etwa { NUMBER($burnt_kcal, maximumFractionDigits: 0) } kcal. Einen Teil spart der Körper anderswo; { NUMBER($kept_kcal, maximumFractionDigits: 0) } zählen, zwischen { NUMBER($lower_kcal, maximumFractionDigits: 0) } und { NUMBER($upper_kcal, maximumFractionDigits: 0) }.
LEVER_EAT_MORE = { lever }: Dafür darfst du { NUMBER($more_kcal, maximumFractionDigits: 0) } kcal mehr essen, also { NUMBER($intake_kcal, maximumFractionDigits: 0) } am Tag, bei etwa gleichem Fettverlust.
LEVER_LOSE_MORE = { lever }, und du isst wie geplant: So verlierst du etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett mehr.
LEVER_AVAILABILITY = Bei { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal bleiben deinem Körper damit { NUMBER($observed, maximumFractionDigits: 1) } kcal je Kilogramm, das kein Fett ist, nach Plan allein { NUMBER($planned, maximumFractionDigits: 1) }.
LEVER_TOO_MUCH = { lever } sind beim geplanten Essen zu viel: Deinem Körper bliebe zu wenig Energie. Iss dafür mehr.
LEVER_TOO_MUCH_EVEN_FED = { lever } sind in dieser Phase zu viel: Selbst mit mehr Essen bliebe deinem Körper zu wenig Energie.
LEVER_ASK_FIRST = Mehr Bewegung könnte helfen. Frag wegen deiner Gesundheitsangaben vorher deinen Arzt oder deine Ärztin, wie viel davon sicher ist.
BREAKS_WHY = Pausen machen eine lange Diätphase leichter. Mehr Fett verlierst du durch sie nicht, und die Waage steigt, solange sie dauern.
CUT_RESET = Deine Energiemenge wird nach { $first_weeks } Wochen und dann { every-weeks } neu gesetzt, damit das Defizit hält, während dein Körper sich ändert.
GAIN_TARGET_TOO_FAR = Kein Aufbau in seinen Grenzen erreicht dieses Gewicht in { weeks }: Er geht bis etwa { NUMBER($weight_kg, maximumFractionDigits: 1) } kg.
GOAL_ALREADY_MET = Dein Ziel ist schon erreicht: Es gibt nichts zu verlieren.
PHASE_USED_UP = Dieser Mini-Cut läuft schon { weeks }, länger soll keiner sein: Geh zur Erhaltung über, oder plane eine längere Diätphase.
CUT_NEEDS_READING = Mit einem nur aus Größe und Gewicht berechneten Körperfett beginnt keine Diätphase. Lass es messen (Hautfalten, Umfänge, DXA) und frag dann wieder.
CUT_NO_ROOM = In die verbleibenden Wochen passt keine Diätphase dieser Art.
CUT_TOO_SMALL = In sicheren Grenzen bleiben dir nur { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal weniger am Tag: { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett in { weeks }. Das kann keine Waage von Wasser unterscheiden.
GAIN_NO_ROOM = Schon das Mindeste, was du essen sollst, ließe dich schneller zunehmen, als gut ist. Darum hältst du.
GAIN_NEEDS_TRAINING = Ein Überschuss baut nur mit Krafttraining Muskeln auf: Fang zuerst mit dem Training an.
TARGET_WRONG_SIDE = Diese Energiemenge führt von deinem Ziel weg, oder du bleibst vorher stehen.
TARGET_NEEDS_INTAKE = Um dein Ziel bis dahin zu erreichen, würdest du { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag essen.
TARGET_BEYOND_RAIL = Weniger als { NUMBER($least_intake_kcal, maximumFractionDigits: 0) } kcal am Tag ist nicht sicher: { why }.
TARGET_TOO_FAST_GAIN = Um dein Ziel rechtzeitig zu erreichen, müsstest du mehr als { NUMBER($percent, maximumFractionDigits: 2) } % deines Gewichts je Woche zunehmen.
TARGET_UNREACHABLE = Keine gleichbleibende Energiemenge erreicht dein Ziel bis dahin.

# Was als Nächstes kommt.
DECISION_NO_DEFICIT = Wir empfehlen dir keine Diät. Iss so viel, wie du verbrauchst, und trainiere; bei Sorgen um Essen oder Gewicht frag eine Arztpraxis oder Ernährungsfachkraft.
DECISION_UNDER_AGE = Unter { NUMBER($limit_years, maximumFractionDigits: 0) } Jahren empfehlen wir keine Diät: Iss genug zum Wachsen und Trainieren, und sprich bei Sorgen ums Gewicht mit einer Arztpraxis.
DECISION_CHOICES_LEFT_OUT = Was du dir für deinen Körper wünschst, spielt in dieser Antwort keine Rolle.
DECISION_CUT_REFUSED = Als Nächstes käme eine Diätphase, doch eine Schutzregel verbietet sie vorerst. Bis das geklärt ist: { phase }.
DECISION_CUT_TOO_SMALL = Als Nächstes käme eine Diätphase, doch was für dich gerade sicher ist, lohnt die Wochen nicht. Bis sich das ändert: { phase }.
DECISION_CUT_REFUSED_UNDER_WAY = Die laufende Diätphase geht aus dem genannten Grund nicht weiter. Stattdessen: { phase }.
DECISION_CUT_TOO_LONG = Du bist seit { weeks } im Defizit, das reicht: Halte jetzt { bridge-weeks }, egal wie viel noch zu verlieren ist.
DECISION_CUT_DONE = Deine Diätphase ist geschafft: Du hast { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett, und { NUMBER($target_percent, maximumFractionDigits: 1) } % genügen. Halte jetzt { bridge-weeks }.
DECISION_CUT_UNDER_WAY = Deine Diätphase geht weiter: Körperfett { NUMBER($fat_percent, maximumFractionDigits: 1) } %, Ziel { NUMBER($target_percent, maximumFractionDigits: 1) } %.
DECISION_CUT_JUST_ENDED = { $weeks ->
    [0] Deine Diätphase ist gerade zu Ende.
   *[other] Deine letzte Diätphase ist { weeks } her.
} Halte { bridge-weeks }, bis Glykogen und Wasser zurück sind.
DECISION_CUT_AGAIN = Deine letzte Diätphase hat nichts gebracht. Halte { bridge-weeks } und protokolliere jede Mahlzeit: Dann sehen wir weiter.
DECISION_CUT_TOO_RECENT = { $weeks ->
    [0] Deine letzte Diätphase ist gerade zu Ende.
   *[other] Deine letzte Diätphase ist { weeks } her.
} Nach { NUMBER($limit_weeks, maximumFractionDigits: 0) } Wochen, am { DATETIME($date, dateStyle: "long") }, kommt wieder eine infrage.
DECISION_TOO_MANY_CUTS = In zwölf Monaten { $cuts ->
    [one] hast du eine Diätphase
   *[other] hast du { $cuts } Diätphasen
} beendet. Das reicht vorerst; die nächste kann am { DATETIME($date, dateStyle: "long") } beginnen.
DECISION_EVENT_READY = Für deinen Anlass genügen { NUMBER($target_percent, maximumFractionDigits: 1) } % Körperfett, und du bist bei { NUMBER($fat_percent, maximumFractionDigits: 1) } %: Eine Diätphase ist nicht nötig.
DECISION_EVENT_TOO_NEAR = { $weeks ->
    [0] Dein Anlass ist in weniger als einer Woche,
   *[other] Dein Anlass ist in { weeks },
} zu nah für eine Diätphase und eine Woche Ruhe danach. Halte: Du würdest nur Wasser verlieren.
DECISION_EVENT_LATER = Dein Anlass ist in { weeks }. Die Diätphase dauert { cut-weeks }, dazu eine Woche Ruhe: Beginne am { DATETIME($date, dateStyle: "long") }.
DECISION_EVENT_NOW = Dein Anlass ist in { weeks }. Die Diätphase dauert etwa { cut-weeks }, dazu eine Woche Ruhe: Jetzt ist es Zeit.
DECISION_EVENT_HOLD_FIRST = Bis zu deinem Anlass lohnt kein Aufbau, der gleich wieder herunter müsste: Halte bis zur Diätphase, etwa am { DATETIME($date, dateStyle: "long") }.
DECISION_EVENT_OUT_OF_REACH = Keine sichere Diätphase erreicht { NUMBER($target_percent, maximumFractionDigits: 1) } % bis zum Anlass. Diese kommt so nah, wie es sicher geht, auf etwa { NUMBER($end_percent, maximumFractionDigits: 1) } %.
DECISION_EVENT_FAR = Dein Anlass ist mehr als { weeks } entfernt: Er zählt noch nicht.
DECISION_EVENT_SETS_DATE = Hier entscheidet das Datum deines Anlasses.
DECISION_EVENT_LEAVES_TIME = Dein Anlass ist { weeks } entfernt: Für diese Diätphase ist jetzt Zeit, und davor fragst du noch einmal.
DECISION_UNMEASURED = Er ist nur aus Größe und Gewicht berechnet, aber kaum niedriger. Miss ihn (Maßband, Hautfalten, DXA), dann weißt du, wo das endet.
DECISION_MEASURE_FIRST_BMI = Dein Körperfett ist nur aus Größe und Gewicht berechnet. Lass es messen (Hautfalten, Umfänge, DXA) und frag dann wieder. Bis dahin: { phase }.
DECISION_MEASURE_FIRST_ERROR = Deine Messung von { NUMBER($fat_percent, maximumFractionDigits: 1) } % kann { NUMBER($error_points, maximumFractionDigits: 1) } Punkte danebenliegen: zu unsicher für eine Diätphase. Wiederhole sie mit einer besseren Methode. Bis dahin: { phase }.
DECISION_WANTS_HOLD = Du möchtest halten, und nichts spricht dagegen.
DECISION_WANTS_HOLD_OVER = Du möchtest halten, also halte. So schlank wie einmal gewählt würdest du mit einer Diätphase ab { NUMBER($due_percent, maximumFractionDigits: 1) } % Körperfett.
DECISION_NEAR_UNDERWEIGHT = Ein Body-Mass-Index von { NUMBER($bmi, maximumFractionDigits: 1) } liegt nahe am Untergewicht. Halten geht vor; unter { NUMBER($limit, maximumFractionDigits: 1) } beginnt keine Fettabnahme.
DECISION_LEAN_ENOUGH = Mit { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett bist du schlank genug: Eine Diätphase würde Trainingszeit kosten und nichts bringen. { advice }
DECISION_NOT_YET = Noch nicht: Bei { NUMBER($fat_percent, maximumFractionDigits: 1) } % kostet ein Mini-Cut mehr Muskeln und Mühe, als er dir in { weeks } bringt. { advice }
DECISION_NONE_DUE = Mit { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett steht noch keine Diätphase an. { advice }
DECISION_NO_DUE = In deinem Bereich und nahe dabei lohnt sich bei keinem Körperfett eine Diätphase.
DECISION_CUT_DUE = Eine Diätphase ist jetzt besser: Dein Körperfett liegt bei { NUMBER($fat_percent, maximumFractionDigits: 1) } %, und ab { NUMBER($due_percent, maximumFractionDigits: 1) } % lohnt sie sich.
DECISION_CUT_FOR_LEANNESS = Du wärst gern schlanker, und das ist Grund genug: Bei { NUMBER($fat_percent, maximumFractionDigits: 1) } % ist eine Diätphase für dich besser.
DECISION_TRADE = Über { weeks } ist { best-phase } dir etwa { NUMBER($ahead_kg, maximumFractionDigits: 1) } kg Magergewebe mehr wert als { other-phase }, mit { NUMBER($probability_percent, maximumFractionDigits: 0) } % Wahrscheinlichkeit.
DECISION_TRADE_CLEAR = Über { weeks } ist { best-phase } dir mehr wert als { other-phase }, mit { NUMBER($probability_percent, maximumFractionDigits: 0) } % Wahrscheinlichkeit.
DECISION_NEAR_DUE = Du liegst nahe an { NUMBER($due_percent, maximumFractionDigits: 1) } % Körperfett, wo eine Diätphase fällig wird: Ein paar Wochen früher oder später ändern wenig.
DECISION_CLOSE = Über { weeks } ist nichts klar besser: In { NUMBER($probability_percent, maximumFractionDigits: 0) } % der Fälle ist { best-phase } mehr wert als { other-phase }. Nimm, was dir passt.
DECISION_CUTS_CLOSE = Über { weeks } läuft { best-phase } auf etwa dasselbe hinaus wie { other-phase }: Nimm die Länge, die dir passt.
DECISION_LONGER_CUT = Ein Mini-Cut ist dafür zu kurz: Du brauchst { weeks }.
DECISION_LONG_WAY = Diese Diätphase kommt nicht bis ans Ziel: Sie endet nach { weeks } bei etwa { NUMBER($end_percent, maximumFractionDigits: 1) } %. Frag dann wieder.
DECISION_SHORTER_PAYS = In einem Zug bis { NUMBER($target_percent, maximumFractionDigits: 1) } % lohnt nicht: Beende diese Diätphase nach { weeks } bei etwa { NUMBER($end_percent, maximumFractionDigits: 1) } %, und frag wieder.
DECISION_WITHIN_HEALTHY = { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett sind für dein Alter und Geschlecht gesund ({ NUMBER($lower_percent, maximumFractionDigits: 0) } bis { NUMBER($upper_percent, maximumFractionDigits: 0) } %): Eine Diätphase wäre fürs Aussehen, nicht für die Gesundheit.
DECISION_BELOW_HEALTHY = Mit { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett hast du nichts zu verlieren. Bist du mit deinem Aussehen unglücklich, sprich mit jemandem, dem du vertraust, oder einer Arztpraxis.
DECISION_ABOVE_HEALTHY = { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett liegen über dem gesunden Bereich für dein Alter und Geschlecht; er endet bei { NUMBER($upper_percent, maximumFractionDigits: 0) } %.
DECISION_HISTORY_UNKNOWN = Deine früheren Phasen sind nicht bekannt. Gib sie an, dann zählt auch eine kürzliche Diätphase oder ein Muster.
DECISION_GAIN_SLOWLY = Baue langsam auf, mit { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal am Tag über dem Bedarf.
PATTERN_CYCLES = In { weeks } folgte auf schnellen Aufbau { $cycles ->
    [one] einmal
    [2] zweimal
   *[other] { $cycles }-mal
} eine Diätphase. { $dieting_weeks } dieser Wochen hast du Diät gehalten.
PATTERN_COST = Ein langsamer Aufbau hätte in denselben { weeks } etwa { NUMBER($lean_kg, maximumFractionDigits: 1) } kg mehr Magergewebe gebracht ({ NUMBER($lower_kg, maximumFractionDigits: 1) } bis { NUMBER($upper_kg, maximumFractionDigits: 1) }). Baue langsamer auf.
PATTERN_SAME_LEAN = Ein langsamer Aufbau hätte etwa gleich viel Magergewebe gebracht ({ NUMBER($lower_kg, maximumFractionDigits: 1) } bis { NUMBER($upper_kg, maximumFractionDigits: 1) } kg mehr), mit weniger Diäten. Baue langsamer auf.
PATTERN_NO_LEAN = Das Auf und Ab hat mindestens ebenso viel Magergewebe gebracht; der Preis waren die Diäten. Ein langsamerer Aufbau braucht weniger davon.
PATTERN_WEEKS = Mit langsamem Aufbau hättest du dasselbe Magergewebe { weeks } früher gehabt.
PATTERN_ASSUMED = { $phases ->
    [one] Eine Phase hatte keine Gewichte und wurde
   *[other] { $phases } Phasen hatten keine Gewichte und wurden
} in üblicher Größe angenommen.
PATTERN_FAT = Nach dem Auf und Ab hast du { NUMBER($fat_kg, maximumFractionDigits: 1) } kg weniger Fett. Ein langsamer Aufbau braucht dafür { $slow_weeks ->
    [one] eine Diätwoche
   *[other] etwa { $slow_weeks } Diätwochen
} statt { $dieting_weeks }.
PATTERN_NO_FAT = Nach dem Auf und Ab hast du trotz aller Diäten { NUMBER($fat_kg, maximumFractionDigits: 1) } kg mehr Fett als nach einem langsamen Aufbau.
CHANGE_DUE_DATE = So wie jetzt erreichst du um den { DATETIME($date, dateStyle: "long") } { NUMBER($due_percent, maximumFractionDigits: 1) } % Körperfett, und dann ist eine Diätphase fällig.
CHANGE_DUE_BEYOND = Bei { NUMBER($due_percent, maximumFractionDigits: 1) } % Körperfett ist eine Diätphase fällig; in { weeks } ist das nicht zu erwarten.
CHANGE_DUE_BELOW = Unter { NUMBER($due_percent, maximumFractionDigits: 1) } % Körperfett hieße die Antwort: noch keine Diätphase.
CHANGE_READING = Deine Messung kann { NUMBER($error_points, maximumFractionDigits: 1) } Punkte danebenliegen: Mit { NUMBER($probability_percent, maximumFractionDigits: 0) } % Wahrscheinlichkeit liegst du in Wahrheit auf der anderen Seite der Grenze.
CHANGE_READING_NEEDED = Erst mit einer echten Körperfettmessung käme eine Diätphase infrage.
CHANGE_SURER_READING = Sagt eine bessere Methode dasselbe, ist das sicher genug für eine Diätphase.
CHANGE_MOTIVE = Wärst du gern schlanker, ist das Grund genug: Eine Diätphase wäre dann ab { NUMBER($due_percent, maximumFractionDigits: 1) } % fällig.
CHANGE_MOTIVE_ON = Wärst du gern schlanker, ist das Grund genug: Die Diätphase könnte bis { NUMBER($target_percent, maximumFractionDigits: 1) } % weitergehen.
CHANGE_UNDERWEIGHT = Unter einem Body-Mass-Index von { NUMBER($limit, maximumFractionDigits: 1) } kommt keine Fettabnahme infrage, wie hoch dein Körperfett auch ist.
CHANGE_CONTENT = Bist du zufrieden, wie du bist, kann eine Diätphase bis { NUMBER($due_percent, maximumFractionDigits: 1) } % Körperfett warten.
CHANGE_CONTENT_ENDS = Bist du zufrieden, wie du bist, kann die Diätphase jetzt enden.
CHANGE_CUT_ENDS = Deine Diätphase endet bei { NUMBER($target_percent, maximumFractionDigits: 1) } % Körperfett, spätestens am { DATETIME($date, dateStyle: "long") }.
CHANGE_TIME = Ab dem { DATETIME($date, dateStyle: "long") } kommt wieder eine Diätphase infrage.
CHANGE_EVENT_START = Die Diätphase für deinen Anlass beginnt spätestens am { DATETIME($date, dateStyle: "long") }.
CHANGE_NO_EVENT = Ohne den Anlass hieße die Antwort: { phase }.
CHANGE_SCREENING = Erst wenn die Gesundheitsfragen beantwortet sind, käme eine Diätphase infrage.
CHANGE_SCREENING_GAIN = Erst wenn die Gesundheitsfragen beantwortet sind, kämen Aufbau oder Diätphase infrage.
CHANGE_CLEARANCE = Erst mit einer ärztlichen Freigabe käme eine Diätphase infrage.
CHANGE_TRAINING = Mit zwei oder mehr Krafteinheiten je Woche würde sich ein Aufbau lohnen, trotz des Fetts.
CHANGE_MOVE_MORE = Wenn du mehr gehst oder Rad fährst, verbrauchst du mehr, und eine lohnende Diätphase kann hineinpassen.

# Dein Protokoll.
LOG_UNIT_MIX_UP = Das Gewicht { NUMBER($given, maximumFractionDigits: 1) } vom { DATETIME($date, dateStyle: "long") } { $others ->
    [0] passt nur in einer anderen Einheit und zählt
    [one] und ein weiteres passen nur in einer anderen Einheit; das erste zählt
   *[other] und { $others } weitere passen nur in einer anderen Einheit; das erste zählt
} als { NUMBER($read_kg, maximumFractionDigits: 1) } kg.
LOG_WEIGHT_SET_ASIDE = Die { NUMBER($given, maximumFractionDigits: 1) } kg vom { DATETIME($date, dateStyle: "long") } passen nicht zu den { NUMBER($expected_kg, maximumFractionDigits: 1) } kg ringsum und zählen nicht. Von jemand anderem? Bitte prüfen.
LOG_WEIGHT_DECIMAL = Die { NUMBER($given, maximumFractionDigits: 1) } kg vom { DATETIME($date, dateStyle: "long") } zählen nicht, ringsum sind es { NUMBER($expected_kg, maximumFractionDigits: 1) } kg: Steht das Komma richtig?
LOG_WEIGHT_TWICE = { $count ->
    [one] Eine Wägung kam
   *[other] { $count } Wägungen kamen
} doppelt an und { $count ->
    [one] zählt
   *[other] zählen
} einmal.
LOG_INTAKE_TWICE = { $others ->
    [0] Für den { DATETIME($date, dateStyle: "long") } kamen zwei verschiedene Energiemengen an, darum zählt keine
    [one] Für den { DATETIME($date, dateStyle: "long") } und einen weiteren Tag kamen mehrere Energiemengen an, darum zählt dort keine
   *[other] Für den { DATETIME($date, dateStyle: "long") } und { $others } weitere Tage kamen mehrere Energiemengen an, darum zählt dort keine
}: Schick eine für den ganzen Tag.
LOG_INTAKE_KILOJOULES = { $count ->
    [one] Eine Energiemenge
   *[other] { $count } Energiemengen
} ab dem { DATETIME($date, dateStyle: "long") } { $count ->
    [one] passt
   *[other] passen
} zu dir nur als Kilojoule und { $count ->
    [one] zählt
   *[other] zählen
} nicht: Schick Kilokalorien.
LOG_INTAKE_SET_ASIDE = Die { NUMBER($given_kcal, maximumFractionDigits: 0) } kcal vom { DATETIME($date, dateStyle: "long") } zählen nicht: Steht das Komma richtig?
LOG_STEPS_TWICE = { $count ->
    [one] Für einen Tag ({ DATETIME($date, dateStyle: "long") }) kamen zwei verschiedene Schrittzahlen an, darum zählt er
   *[other] Für { $count } Tage ab dem { DATETIME($date, dateStyle: "long") } kamen zwei verschiedene Schrittzahlen an, darum zählen sie
} nicht: Schick eine je Tag.
LOG_STEPS_SET_ASIDE = { $count ->
    [one] Die Schritte vom { DATETIME($date, dateStyle: "long") } zählen
   *[other] Die Schritte von { $count } Tagen ab dem { DATETIME($date, dateStyle: "long") } zählen
} nicht: zu viele für einen Tag, oder der Zähler war nicht dabei.
LOG_GAP = Nach dem { DATETIME($date, dateStyle: "long") } fehlt für { days } das Gewicht.
LOG_PARTIAL_INTAKE = { $count ->
    [one] Ein nur teilweise protokollierter Tag zählt
   *[other] { $count } nur teilweise protokollierte Tage zählen
} als nicht protokolliert.
LOG_INTAKE_NOTHING = { $count ->
    [one] Ein Tag mit 0 kcal zählt
   *[other] { $count } Tage mit 0 kcal zählen
} als nicht protokolliert.
LOG_INTAKE_MISSING = An { $count ->
    [one] einem
   *[other] { $count }
} von { since-days } ist das Essen unvollständig; dafür gilt, was du sonst isst, nur weniger genau.
LOG_NO_INTAKE = Ein Essprotokoll, das zählt, gibt es nicht: Der Trend deines Gewichts ist lesbar, dein Bedarf aber weniger sicher.
LOG_UNDER_RESTING = Weniger protokolliert, als du in Ruhe verbrauchst: nicht alles notiert ({ NUMBER($unlogged_percent, maximumFractionDigits: 0) } %), unpassende Formeln ({ NUMBER($equation_percent, maximumFractionDigits: 0) } %) oder Krankheit ({ NUMBER($illness_percent, maximumFractionDigits: 0) } %; frag eine Arztpraxis).
TREND_TOO_EARLY = Es ist noch zu früh: Wiege dich und protokolliere etwa { more-days }.
TREND_TOO_SPARSE = Es ist noch zu früh, und { more-days } zu warten genügt nicht: Protokolliere auch, was du isst.
TREND_OUTLIER = Das Gewicht vom { DATETIME($date, dateStyle: "long") } liegt { NUMBER($off_kg, maximumFractionDigits: 1) } kg { $side ->
    [under] unter
   *[over] über
} den Tagen davor und zählt weniger.
TREND_WATER_JUMP = Am { DATETIME($date, dateStyle: "long") } änderte sich dein Gewicht auf einmal um { NUMBER($jump_kg, maximumFractionDigits: 1) } kg: Wasser, das vergeht, oder eine andere Waage oder Tageszeit.
TREND_LOGGING_CHANGED = Etwa seit dem { DATETIME($date, dateStyle: "long") } schreibst du wohl mehr oder weniger von deinem Essen auf als vorher ({ NUMBER($percent, maximumFractionDigits: 0) } % sicher).
SETTLE_WEIGH_FOOD = Das klärt es: Wiege und protokolliere sieben Tage lang alles, was du isst und trinkst, auch am Wochenende.
SETTLE_WEIGH_FOOD_SPARED = Dein Gewicht und dein Protokoll passen nicht zusammen. Besprich es mit einer Arztpraxis oder Ernährungsfachkraft.
SETTLE_WEIGH_ON = Das klärt es: Wiege dich noch zehn Tage lang täglich. Wasser ohne Ursache vergeht, Fett und Muskeln nicht.
SETTLE_WEIGH_ON_SPARED = Zehn weitere Tage zeigen es: Wasser ohne Ursache vergeht, Gewebe nicht. Wiege dich dafür nicht öfter als sonst.
TREND_STALE = Deine letzte Wägung ist { days } her.
LOG_GOES_PAST = Dein Protokoll reicht bis zum { DATETIME($date, dateStyle: "long") }, weit über den { DATETIME($from_date, dateStyle: "long") } hinaus, um den es geht: Ist ein Datum falsch?
KNOWN_LONG_AGO = Das Letzte, was von dir bekannt ist, ist vom { DATETIME($date, dateStyle: "long") }: Wiege dich und protokolliere zwei Wochen, dann frag noch einmal.
LOG_WEIGHT_COUNTS = Dein Profil sagt { NUMBER($profile_kg, maximumFractionDigits: 1) } kg, dein Protokoll zuletzt { NUMBER($logged_kg, maximumFractionDigits: 1) } kg, und die zählen hier. Bring bitte dein Profil auf den neuesten Stand.
STATE_WEIGHT_APART = Dein Profil sagt { NUMBER($profile_kg, maximumFractionDigits: 1) } kg, zuletzt bekannt waren { NUMBER($known_kg, maximumFractionDigits: 1) } kg, und die zählen hier. Waren das deine Wägungen?
TREND_UNDER_LOGGED = Dein Protokoll enthält etwa { NUMBER($percent, maximumFractionDigits: 0) } % weniger, als dein Körper erwarten lässt: Richte dich nach den Mengen in deinem Protokoll.
TREND_STEPS_FEWER = Du bist am Tag etwa { NUMBER($steps, maximumFractionDigits: 0) } Schritte weniger gegangen als in den Wochen davor. Dein Körper verbraucht dadurch täglich etwa { NUMBER($kcal, maximumFractionDigits: 0) } kcal weniger.
TREND_STEPS_MORE = Du bist am Tag etwa { NUMBER($steps, maximumFractionDigits: 0) } Schritte mehr gegangen als in den Wochen davor. Dein Körper verbraucht dadurch täglich etwa { NUMBER($kcal, maximumFractionDigits: 0) } kcal mehr.
TREND_STEPS_STEADY = Du gehst gleich viel, etwa { NUMBER($steps, maximumFractionDigits: 0) } Schritte am Tag: Ändert sich dein Gewicht, liegt es nicht am Gehen.

# Eine Phase neben ihrem Plan.
REVIEW_TOO_EARLY = Es ist noch zu früh: Die Waage zeigt noch Wasser. { $goes_on ->
    [yes] Bleib beim Plan; wiege
   *[no] Wiege
} dich und protokolliere etwa { more-days }.
REVIEW_FEW_WEIGHINGS = Diese Phase hat bisher { $weighings ->
    [one] eine Wägung
   *[other] { $weighings } Wägungen
}, zu wenig für ein Urteil. { $goes_on ->
    [yes] Bleib beim Plan; wiege
   *[no] Wiege
} dich und protokolliere etwa { more-days }.
REVIEW_NOT_WEIGHED = Deine letzte Wägung ist { days } her, zu lange für ein Urteil. { $goes_on ->
    [yes] Bleib beim Plan; wiege
   *[no] Wiege
} dich und protokolliere etwa { more-days }.
REVIEW_WITHIN_INTERVAL = Ohne Wasser hat sich dein Gewicht um { NUMBER($observed_kg, maximumFractionDigits: 1) } kg geändert; der Plan erwartet bis jetzt { NUMBER($lower_kg, maximumFractionDigits: 1) } bis { NUMBER($upper_kg, maximumFractionDigits: 1) } kg.
REVIEW_NEAR_INTERVAL = Ohne Wasser hat sich dein Gewicht um { NUMBER($observed_kg, maximumFractionDigits: 1) } kg geändert. Der Plan erwartet { NUMBER($lower_kg, maximumFractionDigits: 1) } bis { NUMBER($upper_kg, maximumFractionDigits: 1) } kg: So nah kann es Zufall sein.
REVIEW_OUTSIDE_INTERVAL = Ohne Wasser hat sich dein Gewicht um { NUMBER($observed_kg, maximumFractionDigits: 1) } kg geändert. Der Plan erwartete { NUMBER($lower_kg, maximumFractionDigits: 1) } bis { NUMBER($upper_kg, maximumFractionDigits: 1) } kg: anders als geplant ({ NUMBER($probability_percent, maximumFractionDigits: 0) } % sicher).
REVIEW_STILL_OUTSIDE_INTERVAL = Ohne Wasser hat sich dein Gewicht um { NUMBER($observed_kg, maximumFractionDigits: 1) } kg geändert. Der Plan erwartete { NUMBER($lower_kg, maximumFractionDigits: 1) } bis { NUMBER($upper_kg, maximumFractionDigits: 1) } kg: weiter neben dem Plan, doch weniger deutlich.
REVIEW_CONTRADICTED = Waage und Plan widersprechen sich: Dein Gewicht änderte sich um { NUMBER($weight_kg, maximumFractionDigits: 1) } kg statt { NUMBER($planned_kg, maximumFractionDigits: 1) } kg. Protokoll und Teller weichen ab, oder es ist Wasser.
REVIEW_EVENT_WATER = Etwa { NUMBER($water_kg, maximumFractionDigits: 1) } kg der Änderung deines Gewichts sind Wasser ({ event }){ $explains ->
    [yes] . Das erklärt sie.
   *[no] , aber nicht alles.
}
REVIEW_ATE_MORE = Du hast { NUMBER($difference_kcal, maximumFractionDigits: 0) } kcal am Tag mehr protokolliert als geplant{ $goes_on ->
    [yes] : Versuche, dich an den Plan zu halten.
    [steadily] , Woche für Woche. Sind es bestimmte Tage, plane sie ein: Die anderen Tage machen Platz.
   *[no] .
}
REVIEW_ATE_LESS = Du hast { NUMBER($difference_kcal, maximumFractionDigits: 0) } kcal am Tag weniger protokolliert als geplant.
REVIEW_PLAN_STANDS = Der Plan bleibt, wie er ist: Weniger vorzugeben hilft nicht, solange du mehr isst. Ist er zu hart? Lass dir einen sanfteren machen.
REVIEW_EAT_THE_PLAN = Der Plan bleibt, wie er ist: Iss erst einmal, was er vorgibt. Ist es zu viel? Sag es, und plane neu.
REVIEW_KEPT_LATELY = In der letzten Woche hast du dich an den Plan gehalten: Mach so weiter, dann zeigt es sich.
REVIEW_NO_INTAKE = In dieser Phase ist kein voller Tag protokolliert. Protokolliere eine ganze Woche: Erst dann lässt sich deine Energiemenge richtig einstellen.
REVIEW_AS_TOLD = Es ist kaum Essen protokolliert, also spricht nur dein Gewicht. Machst du so weiter, hält es ein Plan mit etwa { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal am Tag.
REVIEW_NEEDS_LESS = Laut Protokoll hast du planmäßig gegessen, doch der Bedarf sieht nach { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal aus, nicht nach { NUMBER($planned_kcal, maximumFractionDigits: 0) }. Es fehlt Essen, oder du brauchst weniger.
REVIEW_NEEDS_MORE = Laut Protokoll hast du wie geplant gegessen, doch dein Bedarf sieht nach { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal am Tag aus, nicht nach { NUMBER($planned_kcal, maximumFractionDigits: 0) }.
REVIEW_STEPPED = { $direction ->
    [less] Iss ab jetzt { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal am Tag weniger als geplant
   *[more] Iss ab jetzt { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal am Tag mehr als geplant
}. Das ist ein Schritt; die nächste Auswertung sagt, ob noch einer nötig ist.
REVIEW_CORRECTION_HELD = Das Ziel verlangt noch { NUMBER($missing_kcal, maximumFractionDigits: 0) } kcal am Tag weniger, und das ist nicht sicher: { why }.
REVIEW_RAISED_BY_RAIL = Iss zur Sicherheit { NUMBER($correction_kcal, maximumFractionDigits: 0) } kcal am Tag mehr: { why }.
REVIEW_MADE_UP = Was fehlte, ist wieder da: Was du dafür mehr gegessen hast, fällt wieder weg.
REVIEW_TOO_LATE = { $days ->
    [one] Es bleibt nur ein Tag
   *[other] Es bleiben nur { $days } Tage
}, zu wenig für eine Änderung: Iss wie bisher.
REVIEW_PURPOSE_MET = Du hast etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett verloren, { NUMBER($target_kg, maximumFractionDigits: 1) } kg waren das Ziel: Beende die Phase.
REVIEW_CEILING_MET = Dein Körperfett liegt bei etwa { NUMBER($fat_percent, maximumFractionDigits: 1) } %, und bei { NUMBER($ceiling_percent, maximumFractionDigits: 1) } % endet dieser Aufbau.
REVIEW_LIMIT_REACHED = Dieser Mini-Cut läuft schon { days }, und mehr als { $limit_days } sollen es nicht sein: Beende ihn, mit oder ohne Ziel.
REVIEW_GETS_NOWHERE = In { weeks } hat diese Phase kaum Fett abgebaut. Mehr vom Gleichen ändert daran nichts: Beende sie lieber jetzt.
REVIEW_START_AGAIN = Bleib vier Wochen bei der Erhaltung. Fang neu an, wenn die nächsten Wochen Raum dafür lassen: kleineres Defizit, jede Mahlzeit protokolliert.
REVIEW_START_AGAIN_SETTLED = Iss jetzt so viel, wie du verbrauchst. Vor einem weiteren Fettabbau lass in einer Arztpraxis oder Fachberatung für Essstörungen klären, was offen ist.
REVIEW_PHASE_OVER = Die Phase ist vorbei.
REVIEW_TOO_LITTLE_TO_JUDGE = Für ein Urteil über diese Phase war die Zeit zu kurz oder zu selten gewogen.
REVIEW_NOT_SAFE = Ein Defizit ist für dich nicht mehr sicher: Beende die Phase.
REVIEW_NO_ROOM = Unter deinem heutigen Bedarf bleibt kein nützliches Defizit: { why }. Beende die Phase.
REVIEW_STOPPED_BY_RAIL = Die Tage, die noch kommen, wären nicht sicher: Beende die Phase.
REVIEW_SHORTEN = So erreichst du das Ziel um den { DATETIME($date, dateStyle: "long") }, { days } vor dem geplanten Ende.
REVIEW_EXTEND = Du brauchst etwa bis zum { DATETIME($date, dateStyle: "long") }, { days } länger als geplant.
REVIEW_OUT_OF_REACH = So wie es läuft, sind bis zum Ende dieser Phase { NUMBER($fat_kg, maximumFractionDigits: 1) } von { NUMBER($target_kg, maximumFractionDigits: 1) } kg Fett zu erwarten.
REVIEW_GOAL_TOO_FAR = Selbst bis zum { DATETIME($date, dateStyle: "long") }, ihrem spätesten Ende, baut diese Phase etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } von { NUMBER($target_kg, maximumFractionDigits: 1) } kg Fett ab: Beende sie lieber jetzt.
REVIEW_LOST_FAST = In den letzten zwei Wochen hast du { NUMBER($percent, maximumFractionDigits: 1) } % deines Gewichts je Woche verloren, mehr als { NUMBER($limit, maximumFractionDigits: 1) } %.
REVIEW_EATEN_UNDER_RAIL = Zwei Wochen lang hast du { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag protokolliert. Iss mindestens { NUMBER($least_kcal, maximumFractionDigits: 0) }: { why }.
REVIEW_REBOUND = Isst du wieder genug, steigt die Waage binnen zwei Wochen etwa { NUMBER($carried_kg, maximumFractionDigits: 1) } kg: Glykogen, Wasser und Nahrung kommen zurück. Das ist kein Fett.
REVIEW_PAST_RAIL = Ein Schritt reicht nicht, um diesen Plan sicher zu machen: { why }. Beende ihn und plane neu.
REVIEW_SHORTENED_BY_RAIL = Der Plan endet um den { DATETIME($date, dateStyle: "long") }; spätere Tage wären nicht sicher: { why }.
REVIEW_GAIN_PAST_CEILING = So wie geplant ist dieser Aufbau schneller als { NUMBER($limit_percent, maximumFractionDigits: 2) } % des Gewichts je Woche: Beende ihn, und plane einen langsameren.
REVIEW_GAIN_ENOUGH = Dieser Aufbau reicht fürs Erste: Beende ihn, iss so viel, wie du verbrauchst, und trainiere weiter.
REVIEW_GAIN_OVERRUN = In { weeks } hast du etwa { NUMBER($gained_kg, maximumFractionDigits: 1) } kg zugenommen. Mehr als { NUMBER($most_kg, maximumFractionDigits: 1) } kg bringen so schnell nicht mehr Muskeln: Beende diesen Aufbau lieber jetzt.
REVIEW_GAIN_ANEW = Willst du weiter aufbauen, plane von hier aus neu, mit einer Menge, die du einhalten kannst.
REVIEW_GAIN_SLOWED = Mehr als { NUMBER($percent, maximumFractionDigits: 2) } % Zunahme je Woche bauen nicht mehr Muskeln auf: Dein Aufbau wird so gebremst, dass er darunter bleibt.
REVIEW_DEFICIT_CAPPED = Ein größeres Defizit lässt diese Phase nicht zu: { why }.
REVIEW_UNEXPLAINED_LOSS = Du hast in { since-days } ungeplant { NUMBER($percent, maximumFractionDigits: 1) } % deines Gewichts verloren. War das nicht gewollt, lass es ärztlich abklären. { $raised ->
    [yes] Iss mehr, in Schritten.
   *[no] Iss wie geplant.
}
REVIEW_LOSS_BREASTFEEDING = Du hast in { since-days } { NUMBER($percent, maximumFractionDigits: 1) } % deines Gewichts verloren. Nach einer Geburt ist das üblich, sonst frag deine Hebamme. Iss mindestens wie geplant.
REVIEW_AS_EATEN_SO_FAR = Du hast { NUMBER($percent, maximumFractionDigits: 0) } % des Geplanten protokolliert: Die nächsten Tage sind so vorhergesagt, wie du bisher gegessen hast.
REVIEW_AS_PLANNED = Laut Protokoll ist dein Bedarf niedriger, doch die Waage bestätigt das nicht: Die Vorhersage bleibt bei { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal am Tag.
REVIEW_IN_PREGNANCY = Was du in der Schwangerschaft zunimmst, wird an keinem Plan gemessen: Deine Hebamme oder Frauenarztpraxis begleitet dich dabei.
REVIEW_EXPECTED_IN_PREGNANCY = Bis zu { NUMBER($expected_kg, maximumFractionDigits: 1) } kg davon gehören zur Schwangerschaft und heißen nicht, dass du zu viel isst. Deine Menge wird nicht gesenkt.
REVIEW_LATER_ENTRIES = { $count ->
    [one] Ein Eintrag liegt nach dem Ende der Phase: Er zählt
   *[other] { $count } Einträge liegen nach dem Ende der Phase: Sie zählen
} ab jetzt, aber nicht für diese Auswertung.
REVIEW_WINDOW_SHORTER = Deine erste Wägung kommt { days } nach dem Beginn; bis dahin gilt die Vorhersage des Plans.
REVIEW_WAITS = Eine Auswertung deines Protokolls spricht für eine Änderung; die nächste muss sie bestätigen. Bleib bis zum { DATETIME($date, dateStyle: "long") } beim Plan.
REVIEW_CANNOT_WAIT = Diese Änderung ist kein Urteil über deinen Plan: Sie hält dein Essen in sicheren Grenzen, und das wartet nicht.
REVIEW_STEP_MEANWHILE = Zwei Auswertungen sagen dasselbe, darum wartet dieser Schritt nicht auf deine Antwort. Gib sie trotzdem: Davon hängt der nächste ab.
REVIEW_MAY_STOP_EARLY = Du bist dem Plan voraus: Mach weiter und hör, wenn du magst, { days } früher auf.{ $enough ->
    [yes] {" "}Mehr essen musst du nicht.
   *[no] {""}
}
REVIEW_WAITS_FOR_EVENT = Bis zum { DATETIME($date, dateStyle: "long") } sagt dein Gewicht wenig ({ event }). Wiege dich und protokolliere weiter; vorher ändert sich nichts.

# Die eine Frage, die klärt, worin Waage und Protokoll sich widersprechen, und was ihre Antwort bedeutet.
QUESTION_WEIGH_FOOD = Wiege und protokolliere bis zum { DATETIME($date, dateStyle: "long") } alles, was du isst und trinkst, auch am Wochenende, und wiege dich täglich.
QUESTION_WITH_CLINICIAN = Dein Gewicht und dein Protokoll passen nicht zusammen. Besprich es bis zum { DATETIME($date, dateStyle: "long") } mit einer Arztpraxis oder Ernährungsfachkraft.
BODY_FAT_AT_MINIMUM_SPARED = Dein Körper hat keine Reserven übrig: Nimm nicht weiter ab, und sprich mit einer Arztpraxis oder Ernährungsfachkraft.
TALK_TO_WHO_CARES = Sprich über Essen und Gewicht bitte mit der Arztpraxis, die dich betreut.
QUESTION_OIL_AND_ALCOHOL = Wiege und protokolliere bis zum { DATETIME($date, dateStyle: "long") } auch Öl, Aufstriche, Getränke, Alkohol und Bissen beim Kochen: Das fehlt am ehesten.
QUESTION_WATER = Begann in den letzten vier Wochen etwas davon: { $creatine ->
    [yes] Kreatin,{" "}
   *[no] {""}
}{ $salt ->
    [yes] Salziges,{" "}
   *[no] {""}
}{ $training ->
    [yes] neues Training,{" "}
   *[no] {""}
}{ $illness ->
    [yes] Krankheit,{" "}
   *[no] {""}
}{ $travel ->
    [yes] Reise,{" "}
   *[no] {""}
}andere Wiegezeit? Wiege dich täglich bis zum { DATETIME($date, dateStyle: "long") }.
QUESTION_WATER_SPARED = Neu in den letzten vier Wochen: { $creatine ->
    [yes] Kreatin,{" "}
   *[no] {""}
}{ $salt ->
    [yes] Salziges,{" "}
   *[no] {""}
}{ $training ->
    [yes] neues Training,{" "}
   *[no] {""}
}{ $illness ->
    [yes] Krankheit,{" "}
   *[no] {""}
}{ $travel ->
    [yes] Reise,{" "}
   *[no] {""}
}andere Wiegezeit? Wiege dich wie sonst bis zum { DATETIME($date, dateStyle: "long") }.
QUESTION_CYCLE = Wann begannen deine letzten zwei Perioden? Ohne Periode: Ist etwas neu, etwa { $creatine ->
    [yes] Kreatin,{" "}
   *[no] {""}
}{ $salt ->
    [yes] Salziges,{" "}
   *[no] {""}
}{ $training ->
    [yes] Training,{" "}
   *[no] {""}
}Wiegezeit? Wiege dich täglich bis zum { DATETIME($date, dateStyle: "long") }.
REVIEW_GOAL_TOO_FAR_SPARED = Diese Phase leistet nicht, wofür sie da ist: Beende sie lieber jetzt.
QUESTION_CYCLE_SPARED = Wann begannen deine letzten zwei Perioden? Ohne Periode: Ist etwas neu, etwa { $creatine ->
    [yes] Kreatin,{" "}
   *[no] {""}
}{ $salt ->
    [yes] Salziges,{" "}
   *[no] {""}
}{ $training ->
    [yes] Training,{" "}
   *[no] {""}
}Wiegezeit? Wiege dich wie sonst bis zum { DATETIME($date, dateStyle: "long") }.
QUESTION_AGAIN = Das haben wir schon gefragt, und die Antwort fehlt noch. Ging es nicht, sag es: Dann sehen wir zusammen dein Protokoll an.
QUESTION_IF_MORE = Kommt in deinem Protokoll mehr heraus als vorher, so fehlte Essen: Der Plan bleibt, und du protokollierst so weiter.
QUESTION_IF_AS_LOGGED = Kommt so viel heraus wie vorher und läuft dein Gewicht weiter so, ist dein Bedarf anders: Deine Energiemenge ändert sich um einen Schritt.
QUESTION_IF_WATER = Hat davon etwas begonnen, ist es Wasser: Weiter ändert sich nichts, und am { DATETIME($date, dateStyle: "long") } sehen wir wieder nach.
QUESTION_IF_NOT_WATER = Hat nichts davon begonnen, ist Wasser bald keine Erklärung mehr: Dann sehen wir an, was du isst.
QUESTION_FOUND_MORE = Du hast Essen gefunden, das im Protokoll fehlte. Der Plan bleibt und wird an den Tagen seit dem { DATETIME($date, dateStyle: "long") } gemessen.
QUESTION_FOUND_AS_LOGGED = Dein Protokoll ist vollständig, also braucht dein Körper mehr oder weniger als gedacht.
QUESTION_FOUND_WATER = Was sich am { DATETIME($date, dateStyle: "long") } geändert hat, erklärt dein Gewicht als Wasser: Bis es sich setzt, ändert sich nichts.

# Zeichen aus einer Rückmeldung.
CHECK_IN_MISSED_PERIOD = { $eats_less ->
    [yes] Eine ausgebliebene Periode bei wenig Essen zeigt Energiemangel: Beende diese Phase, iss so viel, wie du verbrauchst, und geh in eine Arztpraxis.
   *[no] Eine ausgebliebene Periode kann Energiemangel zeigen: Iss mindestens wie geplant, und geh in eine Arztpraxis.
}
CHECK_IN_LATE_PERIOD = Deine Periode verspätet sich: Iss { $raised ->
    [yes] { NUMBER($raise_kcal, maximumFractionDigits: 0) } kcal am Tag mehr
   *[no] mindestens wie geplant
}, und sprich mit einer Ärztin oder einem Arzt, wenn sie ausbleibt.
CHECK_IN_WEAKER = Deine Kraft in den Hauptübungen ist zweimal nacheinander gefallen: { $eats_less ->
    [yes] Schließe diese Phase binnen einer Woche ab.
   *[no] Iss mindestens wie geplant, und such ärztlichen Rat, wenn das so bleibt.
}
CHECK_IN_MUCH_WEAKER = Deine Kraft in den Hauptübungen ist zweimal nacheinander um ein Zehntel gefallen: { $eats_less ->
    [yes] Beende diese Phase.
   *[no] Iss mindestens wie geplant, und such ärztlichen Rat.
}
CHECK_IN_WORN = Hunger und Schlaf waren zweimal nacheinander schlecht: Iss { $raised ->
    [yes] { NUMBER($raise_kcal, maximumFractionDigits: 0) } kcal am Tag mehr. Es wird leichter und dauert etwas länger.
   *[no] mindestens wie geplant, und such ärztlichen Rat, wenn das so bleibt.
}
CHECK_IN_LOW_MOOD = Deine Stimmung war zweimal nacheinander am Boden: Sprich mit jemandem, dem du vertraust, und bleibt es so, mit einer Ärztin oder einem Arzt.

# Eine Saison.
SEASON_GAIN = Du baust mit { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal Überschuss am Tag auf; deine Energiemenge wird { every-weeks } neu gesetzt.
SEASON_CUT = Bei { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett isst du { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag weniger, bis { NUMBER($end_percent, maximumFractionDigits: 1) } % oder { weeks }, je nachdem, was zuerst kommt.
SEASON_CUT_FOR_WEEKS = Bei { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett isst du { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal am Tag weniger, { weeks } lang, bis etwa { NUMBER($end_percent, maximumFractionDigits: 1) } %.
SEASON_BRIDGE = Nach einer Diätphase hältst du, damit das Wasser zurückkommt, bevor etwas Neues beginnt.
SEASON_AFTER_CUT = Deine letzte Diätphase ist gerade erst vorbei, darum hältst du zuerst.
SEASON_HOLD = Du hältst: Ab { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett baut dieser Plan nicht weiter auf, und { shut } darf keine Diätphase beginnen.
SEASON_HOLD_UNCUT = Du hältst: Ab { NUMBER($fat_percent, maximumFractionDigits: 1) } % Körperfett baut diese Saison nicht weiter auf, und sie hat keine Diätphase. Für einen früheren Aufbau verliere erst Fett.
SEASON_HELD_AT_NEED = Das Mindeste, was du essen sollst, ist etwa dein Bedarf: Du hältst, ohne Überschuss.
SEASON_LEVEL = Dieser Plan hat keinen Überschuss: Du isst, was du verbrauchst, und das Training baut auf.
SEASON_NO_CUT = In diesen Wochen gibt es keine Diätphase: Du brauchst keine, oder es darf keine sein.
SEASON_CUTS = { $cuts ->
    [one] Eine Diätphase von { weeks } nimmt
   *[other] { $cuts } Diätphasen mit zusammen { weeks } nehmen
} { NUMBER($share_percent, maximumFractionDigits: 0) } % der Saison ein.
SEASON_REVIEWED = Die Spannen gelten, wenn du diese Phasen einhältst und dein Protokoll die Energiemenge neu setzt. Sonst sind sie viel weiter.
SEASON_BESIDE_DECISION = Eine Saison folgt ihrer Strategie. Eine Entscheidung kann anders beginnen: Sie wägt nur die nächsten 26 Wochen ab, nach deinen Wünschen.
OPTIMUM_BESIDE_DECISION = Die beste Saison zählt nur Magergewebe. Eine Entscheidung kann anders beginnen: Sie zählt auch Diätwochen und wie schlank du sein willst.
OPTIMUM_LATE_IN_BAND = So schlank wie dein Bereich wirst du frühestens gegen Ende der Saison. Du kommst mindestens { NUMBER($percent, maximumFractionDigits: 0) } % so weit wie mit den härtesten Diätphasen.

# Was zu einem Plan zu sagen ist: Überschriften enden auf _TITLE.
BRIEFING_PHASE_TITLE = { phase-name } ab { weekday }, { DATETIME($date, dateStyle: "long") }
BRIEFING_WEEK_TITLE = Woche { $week }, ab { DATETIME($date, dateStyle: "long") }
BRIEFING_END_TITLE = { phase-name }: das Ende, { DATETIME($date, dateStyle: "long") }
BRIEFING_SIZES_TITLE = Schneller oder langsamer
BRIEFING_CAUTIONS_TITLE = Bitte beachten
BRIEFING_LEVERS_TITLE = Wenn du dich mehr bewegst
BRIEFING_NO_PLAN_TITLE = Kein sicherer Plan
BRIEFING_EAT = Iss { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag, mit { NUMBER($protein_g, maximumFractionDigits: 0) } Gramm Eiweiß.
BRIEFING_DAYS = { $days ->
    [one] An einem Tag der Woche
   *[other] An { $days } Tagen der Woche
} isst du { NUMBER($higher_kcal, maximumFractionDigits: 0) } kcal, an den anderen { NUMBER($lower_kcal, maximumFractionDigits: 0) }.
BRIEFING_EAT_WEEK = Diese Woche hat { NUMBER($week_kcal, maximumFractionDigits: 0) } kcal, etwa { NUMBER($intake_kcal, maximumFractionDigits: 0) } am Tag.
BRIEFING_DAY = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal.
BRIEFING_DAY_TRAINING = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal, mit Training.
BRIEFING_DAY_FLEXIBLE = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal, dein freier Tag.
BRIEFING_DAY_ALCOHOL = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal, dein freier Tag, darin bis zu { NUMBER($alcohol_g, maximumFractionDigits: 0) } Gramm Alkohol.
BRIEFING_MEALS = Jeder Tag hat { NUMBER($protein_g, maximumFractionDigits: 0) } Gramm Eiweiß: etwa { NUMBER($meal_g, maximumFractionDigits: 0) } Gramm je Mahlzeit.
BRIEFING_SCALE = Am { weekday } sollte die Waage etwa { NUMBER($weight_kg, maximumFractionDigits: 1) } kg zeigen, zwischen { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } und { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }.
BRIEFING_SCALE_WATER = Am { weekday } sollte die Waage etwa { NUMBER($weight_kg, maximumFractionDigits: 1) } kg zeigen, zwischen { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } und { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }; { NUMBER($water_kg, maximumFractionDigits: 1) } kg des Rückgangs sind Wasser.
BRIEFING_JUDGE_FROM = Urteile vor Tag { $day } noch nicht nach der Waage.
BRIEFING_FAT = In { weeks } verlierst du voraussichtlich etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett, zwischen { NUMBER($fat_lower_kg, maximumFractionDigits: 1) } und { NUMBER($fat_upper_kg, maximumFractionDigits: 1) }.
BRIEFING_FAT_UP_TO = In { weeks } verlierst du voraussichtlich etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett. Es können bis zu { NUMBER($fat_upper_kg, maximumFractionDigits: 1) } kg sein, oder gar nichts.
BRIEFING_FAT_AND_WATER = Bis dahin sind etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett weg; weitere { NUMBER($water_kg, maximumFractionDigits: 1) } kg sind Wasser, das zurückkommt.
BRIEFING_FAT_GONE = Bis dahin sind etwa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett weg.
BRIEFING_MOSTLY_WATER = Bis dahin ist fast nur Wasser weg, und das kommt zurück.
BRIEFING_GAINED = Bis dahin hast du etwa { NUMBER($lean_kg, maximumFractionDigits: 1) } kg Magergewebe und { NUMBER($fat_kg, maximumFractionDigits: 1) } kg Fett zugelegt.
BRIEFING_STEADY = Dein Körper bleibt etwa, wie er ist; das Auf und Ab ist Wasser.
BRIEFING_CHECKS = Sieh dir den Trend deines Gewichts am { DATETIME($first_date, dateStyle: "long") } und am { DATETIME($second_date, dateStyle: "long") } an.
BRIEFING_END_SCALE = Die Waage sollte dann etwa { NUMBER($weight_kg, maximumFractionDigits: 1) } kg zeigen, zwischen { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } und { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }.
BRIEFING_END_SCALE_WATER = Die Waage sollte dann etwa { NUMBER($weight_kg, maximumFractionDigits: 1) } kg zeigen, zwischen { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } und { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }; { NUMBER($water_kg, maximumFractionDigits: 1) } kg kommen als Wasser zurück.

## coach

REFUSED_CLEARANCE_WITHOUT_WORDS = Die Freigabe braucht Worte: wer sie gab, mit Namen, und warum ein Energiedefizit vertretbar ist.
WARNED_CLEARED = Ein Energiedefizit ist auf eine Freigabe hin geplant, gegeben von { $given_by }. Genannter Grund: { $reason }
MEASUREMENTS_DISAGREE = Körperfett nach { first-method } und nach { second-method } unterscheidet sich um { NUMBER($difference_points, maximumFractionDigits: 1) } Punkte; ihre Fehler erklären etwa { NUMBER($expected_points, maximumFractionDigits: 1) }. Das Intervall ist verbreitert; beide zu wiederholen zeigt, welcher Messung zu trauen ist.
REPEATS_SCATTER = Wiederholungen nach { repeated-method } streuen um { NUMBER($observed_points, maximumFractionDigits: 1) } Punkte Körperfett, üblich sind etwa { NUMBER($expected_points, maximumFractionDigits: 1) }. Das Intervall ist verbreitert.
METHOD_OUTSIDE_AGE_RANGE = Die Gleichung { $method } ist für { NUMBER($from_years, maximumFractionDigits: 0) } bis { NUMBER($to_years, maximumFractionDigits: 0) } Jahre veröffentlicht; bei { NUMBER($age_years, maximumFractionDigits: 0) } ist ihr Fehler { NUMBER($factor, maximumFractionDigits: 2) }-mal so groß angesetzt.
METHOD_UNDER_AGE_RANGE = Die Gleichung { $method } ist ab { NUMBER($from_years, maximumFractionDigits: 0) } Jahren veröffentlicht; bei { NUMBER($age_years, maximumFractionDigits: 0) } ist ihr Fehler { NUMBER($factor, maximumFractionDigits: 2) }-mal so groß angesetzt.
METHOD_OUTSIDE_BMI_RANGE = Körperfett aus dem BMI ist bis zu einem BMI von { NUMBER($to_kg_m2, maximumFractionDigits: 1) } veröffentlicht; bei { NUMBER($bmi_kg_m2, maximumFractionDigits: 1) } ist der Fehler { NUMBER($factor, maximumFractionDigits: 2) }-mal so groß angesetzt.
MEASUREMENT_ADDS_NOTHING = Das trägt zu den anderen Messungen nichts bei: Es teilt seinen Fehler mit einer genaueren.
HEALTHY_RANGE_CONTINUED = Der gesunde Bereich ist für { NUMBER($from_years, maximumFractionDigits: 0) } bis { NUMBER($to_years, maximumFractionDigits: 0) } Jahre veröffentlicht; es gilt die nächste Altersgruppe.
EQUATION_NEEDS_BODY_FAT = Braucht gemessenes Körperfett; hier mit einem geschätzten gezeigt.
EQUATION_OTHER_AGE = Für { NUMBER($from_years, maximumFractionDigits: 0) } bis { NUMBER($to_years, maximumFractionDigits: 0) } Jahre gemacht.
EQUATION_FOR_TRAINED = Für Menschen gemacht, die trainieren.
EQUATION_FOR_EXPERIENCED = Für muskulöse Athletinnen und Athleten nach dem ersten Trainingsjahr gemacht.
EQUATION_FOR_UNTRAINED = Für Menschen gemacht, die nicht trainieren.
EQUATION_SAME_AS = Dieselben Zahlen wie { $equation }, nur einmal gezählt.
RESTING_PREFERS_FAT_FREE_MASS_TRAINED = Bevorzugt werden Gleichungen mit der fettfreien Masse für Trainierte, weil das Körperfett gemessen ist.
RESTING_PREFERS_ATHLETE_WEIGHT = Bevorzugt wird eine Gleichung mit der Körpermasse, für Athletinnen und Athleten gemacht: Das Körperfett ist nicht gemessen, und allgemeine Gleichungen liegen für Trainierte zu niedrig.
RESTING_PREFERS_FAT_FREE_MASS = Bevorzugt werden Gleichungen mit der fettfreien Masse für Erwachsene allgemein, weil das Körperfett gemessen ist.
RESTING_PREFERS_GENERAL = Bevorzugt werden Gleichungen mit Körpermasse, Größe und Alter für Erwachsene allgemein: Das Körperfett ist nicht gemessen.
RESTING_AGE_EXTRAPOLATED = Keine der bevorzugten Gleichungen ist für dieses Alter gemacht (nächstes untersuchtes: { NUMBER($nearest_years, maximumFractionDigits: 0) } Jahre); das Intervall ist darum breiter.
RESTING_BOTH_SEXES = Die Gleichungen beider Geschlechter sind gemittelt, und ihr Unterschied verbreitert das Intervall.
RESTING_FALLS_WITH_AGE = Ab { NUMBER($from_years, maximumFractionDigits: 0) } Jahren sinkt der Ruheumsatz: Von Gleichungen, die das Alter nicht mitrechnen, sind { NUMBER($fall_percent, maximumFractionDigits: 1) } % abgezogen.
EER_FOR_ADULTS = Diese Bedarfswerte gelten ab { NUMBER($from_years, maximumFractionDigits: 0) } Jahren.
EER_BEYOND_CLASS = Die Aktivität liegt jenseits dieser Klasse: Ihr Wert zählt { NUMBER($factor, maximumFractionDigits: 3) }-fach.
LOG_SORTED = Die Einträge waren ungeordnet und sind nach Tagen sortiert.
SEASON_PHYSIOLOGY = Gewonnenes Magergewebe zählt ohne Glykogen und Wasser. Ein Teil kommt in jeder Phase vom Training, ein Teil vom Überschuss, dessen Anteil an Magergewebe sinkt, je größer er ist.
BRIEFING_MACROS = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal am Tag: Eiweiß { NUMBER($protein_g, maximumFractionDigits: 0) } g, Kohlenhydrate { NUMBER($carbohydrate_g, maximumFractionDigits: 0) } g, Fett { NUMBER($fat_g, maximumFractionDigits: 0) } g.
BRIEFING_BALANCE = Energiebilanz { NUMBER($first_kcal, maximumFractionDigits: 0) } kcal am Tag in der ersten Woche, { NUMBER($last_kcal, maximumFractionDigits: 0) } in der letzten.
BRIEFING_SO_FAR = Seit dem Beginn: Fett { NUMBER($fat_kg, maximumFractionDigits: 1) } kg, Magergewebe { NUMBER($lean_kg, maximumFractionDigits: 1) } kg, Wasser und Darminhalt { NUMBER($carried_kg, maximumFractionDigits: 1) } kg. Energiebilanz { NUMBER($balance_kcal, maximumFractionDigits: 0) } kcal am Tag.
BRIEFING_CHANGE = Änderung: Gewicht { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }), Fett { NUMBER($fat_kg, maximumFractionDigits: 1) } ({ NUMBER($fat_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($fat_upper_kg, maximumFractionDigits: 1) }), Magergewebe { NUMBER($lean_kg, maximumFractionDigits: 1) } ({ NUMBER($lean_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($lean_upper_kg, maximumFractionDigits: 1) }), Wasser und Darminhalt { NUMBER($carried_kg, maximumFractionDigits: 1) } ({ NUMBER($carried_lower_kg, maximumFractionDigits: 1) } bis { NUMBER($carried_upper_kg, maximumFractionDigits: 1) }).
BODY_FAT_METHODS_DISAGREE = Zwei Messungen des Körperfetts passen nicht zusammen: { NUMBER($first_percent, maximumFractionDigits: 0) } % mit { first-method } am { DATETIME($first_date, dateStyle: "long") }, { NUMBER($second_percent, maximumFractionDigits: 0) } % mit { second-method } am { DATETIME($second_date, dateStyle: "long") }. Beide zählen nach ihrem Fehler; wiederhole die genauere, bevor sie etwas entscheidet.
LOG_COUNTED_BEFORE = { $count ->
    [one] Ein Eintrag vor dem { DATETIME($date, dateStyle: "long") } ist
   *[other] { $count } Einträge vor dem { DATETIME($date, dateStyle: "long") } sind
} im Stand schon gezählt, und nicht noch einmal.

# Wen zuerst ansehen, und was tun.
ATTENTION_SAFETY = Ein Warnzeichen oder eine Schutzgrenze beendet diese Phase oder verlangt fachlichen Rat.
ATTENTION_CONTRADICTED = Waage und Protokoll passen nicht zusammen.
ATTENTION_OFF_PLAN = Die Phase läuft { pace } als geplant.
ATTENTION_RAISED = Eine Schutzgrenze oder eine Rückmeldung hat die Energiemenge angehoben.
ATTENTION_LOWERED = Die Auswertung senkt die Energiemenge, obwohl die Phase nicht vom Plan abweicht.
ATTENTION_ENDING = Die Phase endet, oder ihr Ende verschiebt sich.
ATTENTION_WAITING = Gerade geschieht etwas, das Gewicht bewegt; das Urteil wartet.
ATTENTION_NOT_WEIGHED = Seit { since-days } kein Gewicht: Niemand weiß, wie die Phase läuft.
ATTENTION_UNDER_RAIL = Protokolliert ist weniger, als eine Schutzgrenze erlaubt.
ATTENTION_SILENT = Seit { since-days } wurde nichts protokolliert.
ATTENTION_NONE = Alles läuft wie geplant, oder es ist zu früh für ein Urteil.
ATTENTION_DO_SAFETY = Geh die Auswertung heute mit der Person durch, und sorge dafür, dass sie die Hilfe bekommt, die dort genannt ist.
ATTENTION_DO_SETTLE = Frag, was die Auswertung fragt: Sie sagt, was es klärt, und bis wann.
ATTENTION_DO_SETTLE_AND_CHANGE = Vereinbare { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal am Tag { $direction ->
    [less] weniger
   *[more] mehr
}; frag dann, was die Auswertung fragt, oder was aus ihrer letzten Frage wurde.
ATTENTION_DO_CHASE = Frag, was aus der letzten Frage wurde: Die Antwort fehlt noch.
ATTENTION_DO_CHANGE = Vereinbare { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal am Tag { $direction ->
    [less] weniger
   *[more] mehr
}.
ATTENTION_DO_LOOK = Sieh dir das Protokoll mit der Person an; ändere noch nichts.
ATTENTION_DO_NEXT = Entscheide mit der Person, was als Nächstes kommt.
ATTENTION_DO_TELL_END = Nenn den neuen letzten Tag.
ATTENTION_DO_ASK = Frag, wie es der Person geht, und bitte um ein Gewicht.
ATTENTION_DO_NOTHING = Es ist nichts zu tun.

## developer

MEASURE_NOT_USED = Die Gleichung benutzt { $fields } nicht.
