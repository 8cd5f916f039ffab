### Lo que dice el servicio, en español. Sintaxis: Project Fluent 1.0; la misma estructura que el archivo inglés.

language-name = Español
language-locale = es-ES

## shared

weeks = { $weeks ->
    [one] 1 semana
   *[other] { $weeks } semanas
}
bridge-weeks = { $bridge_weeks ->
    [one] 1 semana
   *[other] { $bridge_weeks } semanas
}
cut-weeks = { $cut_weeks ->
    [one] 1 semana
   *[other] { $cut_weeks } semanas
}
days = { $days ->
    [one] 1 día
   *[other] { $days } días
}
more-days = { $more_days ->
    [one] 1 día más
   *[other] { $more_days } días más
}
every-weeks = { $weeks ->
    [one] cada semana
   *[other] cada { $weeks } semanas
}
weekday = { $weekday ->
    [1] lunes
    [2] martes
    [3] miércoles
    [4] jueves
    [5] viernes
    [6] sábado
   *[7] domingo
}
weekday-name = { $weekday ->
    [1] Lunes
    [2] Martes
    [3] Miércoles
    [4] Jueves
    [5] Viernes
    [6] Sábado
   *[7] Domingo
}
meals = { $meals ->
    [one] 1 comida
   *[other] { $meals } comidas
}
phase = { $kind ->
    [mini_cut] un mini-cut
    [cut] una definición
    [gain] volumen
   *[maintenance] mantenimiento
}
phase-name = { $kind ->
    [mini_cut] Mini-cut
    [cut] Definición
    [gain] Volumen
   *[maintenance] Mantenimiento
}
best-phase = { $best ->
    [mini_cut] un mini-cut
    [cut] una definición
    [gain] un volumen
   *[maintenance] mantenerte
}
other-phase = { $other ->
    [mini_cut] un mini-cut
    [cut] una definición
    [gain] un volumen
   *[maintenance] mantenerte
}
advice = { $advice ->
    [gain] Gana peso.
   *[maintenance] Mantente.
}
shut = { $shut ->
    [age] a los 65 sin visto bueno médico
    [most] pasado el número permitido
    [year] tras tantas en un año
    [end] tan cerca del final
    [dates] cerca de bloqueos o un evento
    [recent] tan poco después de la última
   *[safe] por tu seguridad de momento
}
why = { $why ->
    [share_of_maintenance] menos comida quedaría muy por debajo de tu mantenimiento
    [fat_release] con menos comida perderías músculo, no grasa
    [fat_release_later] con menos comida perderías más adelante músculo, no grasa
    [energy_availability] con menos comida quedaría poca energía además del entrenamiento
    [protein_and_fat] con menos comida no caben tu proteína y tu grasa
    [least_intake] menos comida quedaría por debajo del mínimo seguro
    [resting_energy] menos comida sería menos de lo que gastas en reposo
    [history_unknown] no se conocen tus dietas anteriores
    [fat_unmeasured] tu grasa corporal no se ha medido
    [fat_at_end] acabarías con muy poca grasa corporal
    [body_mass_index_at_end] acabarías con un peso demasiado bajo
    [weekly_loss] perderías peso demasiado rápido
    [availability_at_end] los últimos días dejarían muy poca energía
    [least_intake_at_end] los últimos días quedarían bajo el mínimo seguro
    [logged_loss] tu registro ya muestra una pérdida rápida
    [body_of_that_day] para entonces tu cuerpo necesita más
    [whole_phase] la fase entera no sería segura
   *[this_person] un déficit no es seguro para ti ahora
}
size-reason = { $because ->
    [body] lo habitual para tu grasa
    [maintenance] un { NUMBER($share_percent, maximumFractionDigits: 0) } % de eso, lo máximo habitual a este ritmo
    [fat] lo que tu grasa corporal aporta bien
    [upper_end] el máximo de lo habitual
    [recent_cut] menos de lo habitual, pues tu última definición es reciente
    [many_cuts] menos de lo habitual, pues ya has hecho muchas definiciones
    [no_training] menos de lo habitual, pues no haces entrenamiento de fuerza
    [not_kept] menor y más largo, porque uno mayor no se cumplió
    [history_unknown] no más mientras no se conozcan tus definiciones anteriores
   *[fat_unmeasured] no más hasta que se mida tu grasa corporal
}
lever = { $lever ->
    [steps] { NUMBER($dose, maximumFractionDigits: 0) } pasos más al día
   *[cycling] { NUMBER($dose, maximumFractionDigits: 0) } minutos más de bicicleta a la semana
}
condition = { $condition ->
    [diabetes_treated] diabetes tratada
    [kidney_disease] una enfermedad renal
    [liver_disease] una enfermedad hepática
    [heart_disease] una enfermedad del corazón
    [thyroid_uncontrolled] una tiroides sin controlar
    [gout] gota
    [gallstones] cálculos biliares
    [bariatric_surgery] cirugía bariátrica
    [cancer] cáncer
    [unexplained_weight_loss] pérdida de peso sin explicación
    [absent_periods] ausencia de la regla
    [low_testosterone_symptoms] signos de testosterona baja
    [stress_fracture] una fractura por estrés
    [recent_surgery_or_injury] cirugía o lesión reciente
    [phenylketonuria] fenilcetonuria
    [insulin_or_secretagogue] insulina o un secretagogo
    [sglt2_inhibitor] un inhibidor de SGLT2
    [glp1_agonist] un agonista de GLP-1
    [diuretic] un diurético
    [lithium] litio
    [warfarin] warfarina
   *[other] esta enfermedad o este medicamento
}
first-method = { $first ->
    [four_compartment] el modelo de cuatro compartimentos
    [dxa] DXA
    [air_displacement] desplazamiento de aire
    [hydrostatic] pesaje bajo el agua
    [skinfolds] pliegues cutáneos
    [girths] perímetros
    [bioimpedance] bioimpedancia
    [visual] estimación visual
   *[bmi_equation] la ecuación del IMC
}
second-method = { $second ->
    [four_compartment] el modelo de cuatro compartimentos
    [dxa] DXA
    [air_displacement] desplazamiento de aire
    [hydrostatic] pesaje bajo el agua
    [skinfolds] pliegues cutáneos
    [girths] perímetros
    [bioimpedance] bioimpedancia
    [visual] estimación visual
   *[bmi_equation] la ecuación del IMC
}
repeated-method = { $method ->
    [four_compartment] el modelo de cuatro compartimentos
    [dxa] DXA
    [air_displacement] desplazamiento de aire
    [hydrostatic] pesaje bajo el agua
    [skinfolds] pliegues cutáneos
    [girths] perímetros
    [bioimpedance] bioimpedancia
    [visual] estimación visual
   *[bmi_equation] la ecuación del IMC
}
event = { $event ->
    [creatine_start] empezar con la creatina
    [creatine_stop] dejar la creatina
    [illness] una enfermedad
    [travel] un viaje
    [injury] una lesión
    [new_programme] un entrenamiento nuevo
    [salty_days] días con mucha sal
    [festive_days] días de fiesta
    [medicine] un medicamento
   *[alcohol] el alcohol
}
pace = { $verdict ->
    [faster] más rápida
   *[slower] más lenta
}

# Words of pictures.
picture-weight = Peso, kg
picture-scale = báscula
picture-tissue = sin agua
picture-water = agua entre ambos
picture-interval = margen del 80 %
picture-energy = Energía, kcal al día
picture-intake = comida
picture-maintenance = mantenimiento
picture-changes = Cambio en cada fase, kg
picture-fat = Grasa
picture-lean = Tejido magro
picture-carried = Agua
picture-to = a
picture-break = Pausa
picture-phase = { phase-name }, { weeks }
picture-fat-loss = Unos { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa en { weeks }; la báscula dice { NUMBER($weight_kg, maximumFractionDigits: 1) } kg el { DATETIME($date, dateStyle: "long") }
picture-fat-loss-water = Unos { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa en { weeks }; la báscula dice { NUMBER($weight_kg, maximumFractionDigits: 1) } kg el { DATETIME($date, dateStyle: "long") }, { NUMBER($water_kg, maximumFractionDigits: 1) } kg de la bajada son agua
picture-gain = Unos { NUMBER($lean_kg, maximumFractionDigits: 1) } kg de tejido magro y { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa en { weeks }; la báscula dice { NUMBER($weight_kg, maximumFractionDigits: 1) } kg el { DATETIME($date, dateStyle: "long") }
picture-hold = { phase-name } durante { weeks }; la báscula dice { NUMBER($weight_kg, maximumFractionDigits: 1) } kg el { DATETIME($date, dateStyle: "long") }
picture-path = De { NUMBER($start_kg, maximumFractionDigits: 1) } kg el { DATETIME($start_date, dateStyle: "long") } a { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } a { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }) el { DATETIME($end_date, dateStyle: "long") }; grasa corporal de { NUMBER($now_percent, maximumFractionDigits: 1) } % ({ NUMBER($now_lower_percent, maximumFractionDigits: 1) } a { NUMBER($now_upper_percent, maximumFractionDigits: 1) }) a { NUMBER($fat_percent, maximumFractionDigits: 1) } % ({ NUMBER($fat_lower_percent, maximumFractionDigits: 1) } a { NUMBER($fat_upper_percent, maximumFractionDigits: 1) }).
picture-path-spared = De { NUMBER($start_kg, maximumFractionDigits: 1) } kg el { DATETIME($start_date, dateStyle: "long") } a { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } a { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }) el { DATETIME($end_date, dateStyle: "long") }.
picture-ranges = Entre paréntesis: márgenes del { NUMBER($percent, maximumFractionDigits: 0) } %.
picture-nearest-fat = Lo más cercano: { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa en el tiempo pedido.
picture-nearest-weeks = { $kind ->
    [mini_cut] Lo más cercano: un mini-cut de { weeks }.
    [cut] Lo más cercano: una definición de { weeks }.
   *[gain] Lo más cercano: un volumen de { weeks }.
}
picture-nearest-deficit = Lo más cercano: un déficit de { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día como mucho.
picture-phase-in-figures = { phase-name }, { DATETIME($start_date, dateStyle: "long") } a { DATETIME($end_date, dateStyle: "long") }: { NUMBER($least_kcal, maximumFractionDigits: 0) } a { NUMBER($most_kcal, maximumFractionDigits: 0) } kcal al día, peso { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } a { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }), grasa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg ({ NUMBER($fat_lower_kg, maximumFractionDigits: 1) } a { NUMBER($fat_upper_kg, maximumFractionDigits: 1) }), tejido magro { NUMBER($lean_kg, maximumFractionDigits: 1) } kg ({ NUMBER($lean_lower_kg, maximumFractionDigits: 1) } a { NUMBER($lean_upper_kg, maximumFractionDigits: 1) }), agua y contenido intestinal { NUMBER($carried_kg, maximumFractionDigits: 1) } kg ({ NUMBER($carried_lower_kg, maximumFractionDigits: 1) } a { NUMBER($carried_upper_kg, maximumFractionDigits: 1) }).
picture-phase-in-figures-spared = { phase-name }, { DATETIME($start_date, dateStyle: "long") } a { DATETIME($end_date, dateStyle: "long") }: { NUMBER($least_kcal, maximumFractionDigits: 0) } a { NUMBER($most_kcal, maximumFractionDigits: 0) } kcal al día, peso { NUMBER($weight_kg, maximumFractionDigits: 1) } kg ({ NUMBER($weight_lower_kg, maximumFractionDigits: 1) } a { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }), agua y contenido intestinal { NUMBER($carried_kg, maximumFractionDigits: 1) } kg ({ NUMBER($carried_lower_kg, maximumFractionDigits: 1) } a { NUMBER($carried_upper_kg, maximumFractionDigits: 1) }).
picture-body-fat-title = Grasa corporal, % del peso
picture-body-fat = grasa corporal
picture-band = límites del intervalo elegido
picture-change = Cambio, kg, con márgenes del 80 %
picture-row-weight = Peso
picture-row-tissue = Tejido
picture-percent = { $value } %
picture-weighings = pesajes
picture-outlier = valor atípico
picture-smoothed = suavizado
picture-logged = comida apuntada
picture-maintenance-logged = mantenimiento según tu registro
picture-window = { $days ->
    [one] Último día
   *[other] Últimos { $days } días
}
picture-window-whole = Todo el registro, { days }
picture-more-of-kind = { $text } ({ $count } más de este tipo.)
picture-forecast = En { weeks }, el { DATETIME($date, dateStyle: "long") }, la báscula dirá unos { NUMBER($weight_kg, maximumFractionDigits: 1) } kg
picture-forecast-intake = Comida y mantenimiento durante { weeks }
picture-target-reached = Con { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día se llega al objetivo el { DATETIME($date, dateStyle: "long") }
picture-target-met = Con { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día se llega al objetivo
picture-target-missed = Ninguna cantidad segura de comida llega a tiempo al objetivo
picture-nearest-intake = Lo más cercano: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día.
picture-nearest-date = Lo más cercano: el objetivo el { DATETIME($date, dateStyle: "long") }.
picture-nearest-intake-date = Lo más cercano: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día; el objetivo el { DATETIME($date, dateStyle: "long") }.
picture-forecast-path = Peso de { $start_weight } el { DATETIME($start_date, dateStyle: "long") } a { $weight } al final del { DATETIME($end_date, dateStyle: "long") }, con { $fat } de grasa y una grasa corporal del { $percent }.
picture-forecast-path-spared = Peso de { $start_weight } el { DATETIME($start_date, dateStyle: "long") } a { $weight } al final del { DATETIME($end_date, dateStyle: "long") }.
picture-forecast-maintenance = Mantenimiento al principio: { $maintenance } al día.
picture-trend = { $way ->
    [down] Unos { NUMBER($rate_kg, maximumFractionDigits: 2) } kg menos de grasa y tejido magro por semana
    [up] Unos { NUMBER($rate_kg, maximumFractionDigits: 2) } kg más de grasa y tejido magro por semana
   *[level] Ni ganancia ni pérdida clara de grasa y tejido magro
}; unas { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal al día mantienen el peso
picture-trend-spared = { $way ->
    [down] Sin contar el agua, unos { NUMBER($rate_kg, maximumFractionDigits: 2) } kg menos por semana
    [up] Sin contar el agua, unos { NUMBER($rate_kg, maximumFractionDigits: 2) } kg más por semana
   *[level] Sin contar el agua, ni ganancia ni pérdida clara
}; unas { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal al día mantienen el peso
picture-trend-urgent = { $way ->
    [down] Sin contar el agua, unos { NUMBER($rate_kg, maximumFractionDigits: 2) } kg menos por semana
    [up] Sin contar el agua, unos { NUMBER($rate_kg, maximumFractionDigits: 2) } kg más por semana
   *[level] Sin contar el agua, ni ganancia ni pérdida clara
}
picture-trend-early = Faltan datos para ver una dirección
picture-trend-early-days = Faltan datos para ver una dirección: aproximadamente { more-days }
picture-trend-log = Registro de peso del { DATETIME($start_date, dateStyle: "long") } al { DATETIME($end_date, dateStyle: "long") }.
picture-trend-day = Registro de peso del { DATETIME($date, dateStyle: "long") }.
picture-trend-smoothed = Peso suavizado de { $start_weight } a { $weight }. El tejido cambia ahora { $rate } por semana.
picture-trend-maintenance = Mantenimiento según tu propio registro: { $maintenance } al día.
picture-trend-change = En { days }: peso { $weight }, tejido { $tissue }, agua y contenido intestinal { $carried }.
picture-trend-composition = Del tejido: grasa { $fat }, magro { $lean }.
picture-cuts = { $cuts ->
    [0] sin definición
    [one] con 1 definición
   *[other] con { $cuts } definiciones
}
picture-season = Tejido magro { $lean } y grasa { $fat } en { weeks } { picture-cuts }
picture-season-changes = Tejido magro { $lean }, grasa { $fat }; { days } en déficit.
picture-season-path = Peso de { $start_weight } el { DATETIME($start_date, dateStyle: "long") } a { $weight } al final del { DATETIME($end_date, dateStyle: "long") }, grasa corporal del { $now_percent } al { $percent }, { $peak_percent } al final de la semana más alta.
picture-season-path-spared = { picture-forecast-path-spared }
picture-season-total = Cambio en toda la temporada, kg
picture-limit = { $limit ->
    [weeks_above_band] No se cumple: semanas por encima del intervalo, { $found } en vez de { $allowed } como mucho.
    [final_fat_fraction] No se cumple: grasa corporal al final, { $found } en vez de { $allowed } como mucho.
   *[event_fat_fraction] No se cumple: grasa corporal para un evento, { $found } por encima de la deseada.
}
picture-limit-dieting = No se cumple: semanas en déficit, { $found } en vez de { $allowed } como mucho.
picture-season-phase = { phase-name }, { DATETIME($start_date, dateStyle: "long") } a { DATETIME($end_date, dateStyle: "long") }: peso { $weight }, grasa { $fat }, tejido magro { $lean }.
picture-season-phase-spared = { phase-name }, { DATETIME($start_date, dateStyle: "long") } a { DATETIME($end_date, dateStyle: "long") }: peso { $weight }.
picture-sign = { phase-name }: { $text }
strategy-name = { $strategy ->
    [slow_gain_rare_mini_cuts] Volumen lento, pocos mini-cuts
    [fast_gain_long_cut] Volumen rápido, una definición larga
    [fast_gain_repeated_mini_cuts] Volumen rápido, mini-cuts repetidos
    [slow_gain_no_cut] Volumen lento, sin definición
   *[own] { $strategy }
}
picture-past = { $past ->
    [yes] , por encima de un límite
   *[no] {""}
}
picture-comparison = Más tejido magro en { weeks }: { strategy-name }
picture-comparison-one = En { weeks }: tejido magro { $lean }, grasa { $fat }
picture-comparison-one-spared = En { weeks }: tejido magro { $lean }
picture-most-lean = Más tejido magro: «{ strategy-name }», { $value }{ picture-past }.
picture-least-fat = Menos grasa ganada: «{ strategy-name }», { $value }{ picture-past }.
picture-odds = «{ strategy-name }» da más tejido magro que «{ $rival }» con una probabilidad del { $percent }.
picture-odds-unclear = Sin diferencia clara: «{ strategy-name }» da más tejido magro que «{ $rival }» con una probabilidad del { $percent }.
picture-draws = Medianas de { $draws } sorteos de lo que es incierto.
picture-strategy-in-figures = «{ strategy-name }»: tejido magro { $lean }, grasa { $fat }, grasa corporal máxima { $percent }, semanas por encima del intervalo { $above }, días en déficit { $dieting }.
picture-strategy-in-figures-spared = «{ strategy-name }»: tejido magro { $lean }, días en déficit { $dieting }.
picture-lean-gained = Tejido magro ganado, kg
picture-fat-gained = Grasa ganada, kg
picture-peak = Grasa corporal máxima, %
picture-weeks-above = Semanas por encima del intervalo
picture-days-dieting = Días en déficit
picture-median = mediana y margen del 80 %
picture-limit-broken = un límite no se cumple
picture-limit-not-kept = Un límite no se cumple.

# Palabras de los documentos: calendarios, resúmenes y lo que comparten.
document-plan = Plan desde el { DATETIME($date, dateStyle: "long") }
document-season = Temporada desde el { DATETIME($date, dateStyle: "long") }, { weeks }
document-start = Mantenimiento { $maintenance } al día, grasa corporal { $fat }.
document-start-spared = Mantenimiento { $maintenance } al día.
document-cautions = Ten en cuenta
document-why = Por qué
document-phases = Fases
document-intake = Comida
document-intake-from-today = Desde hoy: { $intake } kcal
document-days = Día a día
document-forecast = Previsión
document-sizes = Otros tamaños y lo que cuestan
document-levers = Más actividad y lo que aporta
document-rules = Junto a las reglas sencillas
document-limits = Límites
document-in-all = En total
document-trade-off = Qué dan las semanas por encima del intervalo
document-trade-off-end = Qué da más grasa corporal al final
document-phase-from = { phase-name } desde el { DATETIME($date, dateStyle: "long") }
document-carried-means = Agua: glucógeno, agua y contenido intestinal, que van y vienen con la comida.
document-column = { $column ->
    [phase] fase
    [from] desde
    [to] hasta
    [weeks] semanas
    [week] semana
    [weight] peso
    [carried] agua
    [kcal_a_day] kcal al día
    [kcal] kcal
    [protein_g] proteína g
    [carbohydrate_g] hidratos g
    [fat_g] grasa g
    [fibre_g] fibra g
    [alcohol_g] alcohol g
    [day] día
    [training] entrenamiento
    [meals_g] proteína por comida, g
    [at_the_end_of] al final del
    [weight_kg] peso kg
    [balance] balance de energía kcal al día
    [size] tamaño
    [intake] comida kcal
    [rate] % del peso por semana
    [rails] se avisa de
    [activity] actividad
    [burnt] gasto kcal al día
    [counts] cuenta kcal al día
    [use] para
    [availability] queda para el cuerpo, kcal/kg
    [expected] esperado
    [days_dieting] días en déficit
    [strategy] estrategia
   *[what] qué
}
document-column-of-tissue = { $column ->
    [fat] grasa
    [lean] tejido magro
    [fat_kg] grasa kg
    [lean_kg] tejido magro kg
    [weeks_above] semanas por encima del intervalo
   *[fat_percent] grasa corporal %
}
document-element = { $element ->
    [easing_in] comienzo suave
   *[break] pausa
}
document-day-kind = { $kind ->
    [higher_carbohydrate] más hidratos
   *[lower_carbohydrate] menos hidratos
}, { $days ->
    [one] un día a la semana
   *[other] { $days } días a la semana
}
document-size = { $size ->
    [gentle] suave
    [steady] constante
    [brisk] rápido
    [own] lo pedido o calculado
   *[largest] lo máximo seguro
}
document-size-planned = { $size }, en el plan
document-rail = { $rail ->
    [age] la edad
    [pregnancy_lactation] embarazo o lactancia
    [eating_disorder] un trastorno alimentario
    [medical] una enfermedad o un medicamento
    [screening_unanswered] preguntas de salud sin responder
    [bmi] estar cerca del bajo peso
    [body_fat] poca grasa corporal
    [deficit_share] una parte grande del mantenimiento
    [fat_supply] pedir mucho a la grasa
    [tissue_loss] una pérdida rápida
    [logged_loss] una pérdida rápida en el registro
    [energy_availability] poca energía además del entrenamiento
    [intake_floor] poca comida
    [protein] la proteína
    [dietary_fat] poca grasa en la comida
    [carbohydrate] pocos hidratos
    [gain_rate] una ganancia rápida
    [cut_history] definiciones anteriores
   *[other] otro límite
}
document-expected = Se espera: peso { $weight }, grasa { $fat }, tejido magro { $lean }, agua { $carried }.
document-expected-spared = Se espera: peso { $weight }, agua { $carried }.
document-expected-tissue = Se espera: peso { $weight }, grasa { $fat }, tejido magro { $lean }.
document-expected-tissue-spared = Se espera: peso { $weight }.
document-eaten = { $intake } kcal al día: proteína { $protein } g, hidratos { $carbohydrate } g, grasa { $fat } g, fibra { $fibre } g
document-eaten-until = { document-eaten }, hasta el { DATETIME($date, dateStyle: "long") }.
document-eaten-for = { document-eaten }, durante { weeks }.
document-day-kind-eaten = { document-day-kind }: { $intake } kcal, proteína { $protein } g, hidratos { $carbohydrate } g, grasa { $fat } g.
document-day = { weekday-name }: { $intake } kcal, proteína { $protein } g ({ $meals }), hidratos { $carbohydrate } g, grasa { $fat } g
document-day-training = , { $minutes } min de entrenamiento
document-day-alcohol = , con { $alcohol } g de alcohol
document-training = { $minutes } min, { $kcal } kcal
document-lever = { lever }
document-use = { $use ->
    [instead] comer más a cambio
   *[together] comer según el plan
}
document-not-safe = no es seguro
document-availability = { $observed } (según el plan { $planned })
document-rule-static = Con 7.700 kcal por kilo y un déficit constante: { $fat } de grasa.
document-rule-quoted = Se suele decir: { $fat } de grasa en estas semanas y { $drop } en la báscula los primeros días. Aquí se espera: { $forecast } en la primera semana.
document-strategy-gain = Volumen con { $surplus } kcal de más al día.
document-strategy-no-cut = Sin definición.
document-strategy-uncut = El volumen acaba con { $starts } de grasa corporal, sin definición.
document-strategy-cut = Una definición empieza con { $starts } de grasa corporal y acaba con { $ends }.
document-strategy-deficit = Su déficit es de { $deficit } kcal al día.
document-strategy-longest = Dura { weeks } como mucho.
document-strategy-maintenance = Después, al menos { weeks } de mantenimiento.
document-total = { $total ->
    [dieting] días en déficit
   *[cuts] definiciones
}
document-total-of-tissue = { $total ->
    [lean] tejido magro ganado
    [fat] grasa ganada
   *[end] grasa corporal al final
}
document-peak = grasa corporal máxima, el { DATETIME($date, dateStyle: "long") }
document-above-band = semanas por encima del intervalo ({ $band })

## member

NOT_MEDICAL_ADVICE = Esto es información, no consejo médico. Antes de cambiar tu dieta, habla con un médico o dietista titulado; prevalecen las normas locales.
FAT_FROM_BMI = Tu grasa se ha estimado por estatura y peso, y en personas musculosas sale demasiado alta: mídela antes de fiarte de ese dato.
ON_LOGGING_SCALE = Este mantenimiento va con tu forma de apuntar: si apuntas menos de lo que comes, tu registro debe mostrar esta cantidad.
ON_LOGGING_SCALE_URGENT = Este mantenimiento va con tu forma de apuntar. Es una estimación y no una cantidad que comer: esa la dice el médico.
TWO_SEXES = Se han usado las fórmulas de ambos sexos: el margen cubre las dos, y se aplican los límites más estrictos.
FROM_EQUATIONS = Esto sale solo de fórmulas: aún no hay comida apuntada que diga más. Lo afinan cuatro semanas de peso y comida apuntados.
MAINTENANCE_BY_WEIGHT = Apenas apuntas comida, así que esto sale de cómo respondió tu peso a lo indicado. Apuntar la comida lo hace más exacto.

# Negativas, cada una con a quién acudir.
REFUSED_LOWER_DAYS = Un día en que comes menos que otros es un día en déficit. El mismo plan es posible con todos los días iguales.
REFUSED_UNDER_AGE = Con menos de { NUMBER($limit_years, maximumFractionDigits: 0) } años no se planea ningún déficit. Habla antes con un médico o dietista; mantenimiento y tendencias siguen disponibles.
REFUSED_OLDER_WITHOUT_CLEARANCE = Desde los { NUMBER($limit_years, maximumFractionDigits: 0) } años una dieta cuesta más músculo y hueso. Pide antes el visto bueno médico; mantenimiento y tendencias siguen disponibles.
REFUSED_PREGNANCY = En el embarazo no se planea ningún déficit. Habla con tu matrona o equipo médico sobre comida y peso; mantenimiento y tendencias siguen disponibles.
REFUSED_BREASTFEEDING = Durante la lactancia no se planea ningún déficit. Habla antes con tu matrona o tu médico; mantenimiento y tendencias siguen disponibles.
REFUSED_EATING_DISORDER = Con un trastorno alimentario, ahora o antes, no se planea déficit ni objetivo corporal. Un servicio especializado o tu médico puede ayudarte.
REFUSED_DOUBT = No sabías si tienes un trastorno alimentario. Acláralo antes con tu médico o un servicio especializado; hasta entonces no se recomienda ningún déficit.
REFUSED_MEDICAL = Con { condition }{ $others ->
    [0] {""}
    [one] {" "}y otro dato
   *[other] {" "}y { $others } datos más
} no se planea déficit sin visto bueno. Habla antes con un médico o dietista.
REFUSED_BMI = Con un índice de masa corporal de { NUMBER($bmi, maximumFractionDigits: 2) } (menos de { NUMBER($limit, maximumFractionDigits: 1) } es bajo peso) no se planea déficit. Habla con un médico o dietista.
REFUSED_REFEEDING = Con tu peso, comer más sin supervisión puede ser peligroso: aquí no se da ninguna cantidad. Ve hoy mismo al médico; es urgente.
REFUSED_FAT_TARGET = Para ti no se planea ningún objetivo de grasa, tampoco en volumen. Habla antes con un médico o dietista.
REFUSED_BAND = Para ti no se planea ningún objetivo de grasa. Quita el intervalo de grasa y los objetivos de los eventos.
REFUSED_UNANSWERED = Antes de responder las preguntas de salud no se planea ni déficit ni volumen. Lo que no se sabe nunca se da por bueno.
REFUSED_LOGGED_LOSS = Según tu registro pierdes un { NUMBER($percent, maximumFractionDigits: 2) } % por semana, más del { NUMBER($limit_percent, maximumFractionDigits: 1) } %: ningún déficit. Come más; si no lo buscabas, ve al médico.
UNDERWEIGHT = Pesas demasiado poco para tu estatura. El camino desde aquí es ganar peso despacio: habla de ello con un médico o dietista.
UNDERWEIGHT_AHEAD = Tal como comes ahora llegarás a pesar demasiado poco para tu estatura. Come al menos lo planeado o ve al médico.
REFUSED_BODY_FAT = { $speaks ->
    [yes] Con un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa no se planea ningún déficit: el límite seguro es el { NUMBER($limit_percent, maximumFractionDigits: 1) } %.
   *[no] Tu cuerpo no tiene reservas para un déficit.
} Habla con un médico o dietista.
REFUSED_LOSS = Así perderías un { NUMBER($percent, maximumFractionDigits: 2) } % de tu peso por semana, más del { NUMBER($limit_percent, maximumFractionDigits: 2) } %: come más.
REFUSED_END_BODY_FAT = { $speaks ->
    [yes] Esto acabaría en un { NUMBER($fat_percent, maximumFractionDigits: 2) } % de grasa, por debajo del límite seguro del { NUMBER($limit_percent, maximumFractionDigits: 1) } %: hazlo más corto o come más.
   *[no] Esto dejaría a tu cuerpo sin reservas: hazlo más corto o come más.
}
REFUSED_END_BMI = Esto acabaría en un índice de masa corporal de { NUMBER($bmi, maximumFractionDigits: 2) }; por debajo de { NUMBER($limit, maximumFractionDigits: 1) } hay bajo peso: hazlo más corto o come más.
REFUSED_GAIN_RATE = Así ganarías un { NUMBER($percent, maximumFractionDigits: 3) } % de tu peso por semana. Con tu experiencia, más de un { NUMBER($limit_percent, maximumFractionDigits: 2) } % no da más músculo.
REFUSED_TARGET = Un objetivo del { NUMBER($fat_percent, maximumFractionDigits: 2) } % de grasa queda por debajo del límite seguro del { NUMBER($limit_percent, maximumFractionDigits: 1) } %: ponlo más alto.
REFUSED_DEFICIT = Un déficit de { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día es demasiado: { why }. Come al menos { NUMBER($least_intake_kcal, maximumFractionDigits: 0) }.
REFUSED_HELD = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día es muy poco fuera de un déficit. Come al menos { NUMBER($least_intake_kcal, maximumFractionDigits: 0) }; si no puedes, habla con un médico o dietista.
REFUSED_PROTEIN = { NUMBER($observed, maximumFractionDigits: 2) } gramos de proteína por kilo es menos que los { NUMBER($limit, maximumFractionDigits: 2) } que pide un déficit: planea más.
REFUSED_CUT_WITHOUT_READING = Tu grasa corporal decide cuándo empiezan las definiciones de una temporada, y debe estar medida: mídela primero.
SEE_MIDWIFE = En el embarazo no bajamos lo que comes. Habla con tu matrona o equipo médico sobre comida y peso.
WEIGHT_RISES_IN_PREGNANCY = En el embarazo tu peso debe subir. Lo que crece no está en los pesos de aquí: lo sigue tu matrona o equipo médico.
SEE_AFTER_BIRTH = Mientras das el pecho no bajamos lo que comes: habla con tu matrona o tu médico.
SEE_EATING_DISORDER_SERVICE = No bajamos lo que comes. Un servicio de trastornos alimentarios o tu médico puede ayudarte con la comida y el peso.
SEE_FOR_MINORS = Con menos de 18 años no bajamos lo que comes: habla con tu médico o pediatra sobre el peso.

# Lo que se limita o se sube.
CAPPED_UNANSWERED = El volumen tras el mantenimiento se omite hasta que respondas las preguntas de salud.
CAPPED_PROTEIN_ROOM = La proteína es de { NUMBER($given, maximumFractionDigits: 1) } gramos por kilo en vez de { NUMBER($asked, maximumFractionDigits: 1) }: junto a la grasa que necesitas no cabe más.
CAPPED_DEFICIT = El déficit se queda en { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día: { why }.
CAPPED_DEFICIT_LATER = Más adelante el déficit es de solo { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día: { why }.
CAPPED_DEFICIT_FOR_BMI = El déficit se queda en { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día, o acabarías con bajo peso. Con { NUMBER($asked_kcal, maximumFractionDigits: 0) } kcal puedes seguir { weeks } como mucho.
CAPPED_PROTEIN = La proteína sube a { NUMBER($limit, maximumFractionDigits: 2) } gramos por kilo, lo mínimo en un déficit.
CAPPED_GAIN_RATE = Tu superávit se queda en { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal al día: ganar más de un { NUMBER($percent, maximumFractionDigits: 2) } % de tu peso por semana no da más músculo.
CAPPED_GAIN_RATE_AT_FIRST = Tu superávit es al principio de { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal al día: ganar más de un { NUMBER($percent, maximumFractionDigits: 2) } % por semana no da más músculo.
CAPPED_HISTORY_UNKNOWN = No se conocen tus dietas anteriores, así que el déficit se queda en las { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día habituales.
NO_SAFE_DEFICIT = Ningún déficit útil es seguro para ti ahora: { why }.
MEASURE_FIRST = Tu grasa no se ha medido, así que el déficit es como mucho de { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día. Para pedir más, mídela primero.
RATIO_DECIDES = Aquí decide tu registro: contiene cerca del { NUMBER($percent, maximumFractionDigits: 0) } % de lo que comes. Pesa toda la comida una semana para saberlo mejor.
RAISED_TO_FLOOR = Lo que comes sube a { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día, lo mínimo para tu cuerpo fuera de un déficit.

# A qué prestar atención.
WARNED_YOUNG_ADULT = Con 18 o 19 años tu cuerpo quizá siga madurando: que el déficit sea pequeño y corto.
WARNED_EATING_DISORDER_DOUBT = No sabías si tienes un trastorno alimentario. Si la comida o el peso te preocupan, habla antes con tu médico; para si empeora.
WARNED_LOGGED_LOSS = Según tu registro pierdes un { NUMBER($percent, maximumFractionDigits: 1) } % de tu peso por semana. Si ninguna dieta lo explica, come más y consulta al médico.
WARNED_EATEN_FLOOR = { $periods ->
    [no] Tu registro muestra unas { NUMBER($eaten_kcal, maximumFractionDigits: 0) } kcal al día; come al menos { NUMBER($limit_kcal, maximumFractionDigits: 0) }. Con ánimo bajo o atracones, ve al médico.
   *[yes] Tu registro muestra unas { NUMBER($eaten_kcal, maximumFractionDigits: 0) } kcal al día; come al menos { NUMBER($limit_kcal, maximumFractionDigits: 0) }. Con ánimo bajo, atracones o falta de regla, ve al médico.
}
WARNED_EATEN_AVAILABILITY = { $periods ->
    [no] Come más: según tu registro queda muy poca energía además del entrenamiento. Con ánimo bajo o atracones, ve al médico.
   *[yes] Come más: según tu registro queda muy poca energía además del entrenamiento. Con ánimo bajo, atracones o falta de regla, ve al médico.
}
WARNED_LOGGED_LOSS_URGENT = Según tu registro pierdes un { NUMBER($percent, maximumFractionDigits: 1) } % de tu peso por semana. Díselo al médico.
WARNED_EATEN_FLOOR_URGENT = Tu registro muestra unas { NUMBER($eaten_kcal, maximumFractionDigits: 0) } kcal al día, demasiado poco. Díselo al médico.
WARNED_EATEN_AVAILABILITY_URGENT = Según tu registro, al entrenar te queda muy poca energía. Díselo al médico, y cuéntale cómo entrenas.
WARNED_HISTORY_UNKNOWN = No se conocen tus dietas anteriores, así que el déficit es como mucho el habitual.
WARNED_HISTORY_NOT_TOLD = No se conocen tus dietas anteriores. Mientras tanto, no pases de un déficit de { NUMBER($limit_kcal, maximumFractionDigits: 0) } kcal al día.
WARNED_BMI = Un índice de masa corporal de { NUMBER($bmi, maximumFractionDigits: 1) } está cerca del bajo peso: que la fase sea corta.
WARNED_BODY_FAT = La fase acaba en un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa: casi nadie se mantiene bien con tan poca.
WARNED_TARGET = Un objetivo del { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa es tan bajo que casi nadie se mantiene bien con él.
WARNED_DEFICIT_SHARE = El déficit es el { NUMBER($share_percent, maximumFractionDigits: 0) } % de tu mantenimiento: cuenta con hambre y cansancio.
WARNED_DAY_DEFICIT_SHARE = En tus días más escasos comes un { NUMBER($share_percent, maximumFractionDigits: 0) } % menos de lo que gastas: cuenta con hambre y cansancio.
WARNED_LARGE_DEFICIT = { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día son más que las { NUMBER($usual_kcal, maximumFractionDigits: 0) } a las que suele llegar un mini-cut: vigila hambre, sueño y fuerza.
WARNED_FAT_SUPPLY = El déficit pide { NUMBER($observed, maximumFractionDigits: 1) } kcal al día a cada kilo de grasa. Por encima de { NUMBER($limit, maximumFractionDigits: 1) } puedes perder más músculo.
WARNED_DAY_FAT_SUPPLY = En tus días más escasos cada kilo de grasa tendría que aportar { NUMBER($observed, maximumFractionDigits: 1) } kcal. Por encima de { NUMBER($limit, maximumFractionDigits: 1) } puedes perder más músculo.
WARNED_DAY_AVAILABILITY = { $periods ->
    [no] En tus días más escasos queda poca energía además del entrenamiento. Vigila sueño, ánimo y libido; si cambian, come más.
   *[yes] En tus días más escasos queda poca energía además del entrenamiento. Vigila sueño, ánimo, libido y ciclo; si cambian, come más.
}
WARNED_LOSS = Está previsto perder un { NUMBER($percent, maximumFractionDigits: 2) } % de tu peso por semana. Es rápido: vigila tu fuerza.
WARNED_AVAILABILITY = { $periods ->
    [no] Queda poca energía además del entrenamiento: vale solo unas semanas. Vigila sueño, ánimo y libido; si cambian, para.
   *[yes] Queda poca energía además del entrenamiento: vale solo unas semanas. Vigila sueño, ánimo, libido y ciclo; si cambian, para.
}
WARNED_UNDER_RESTING = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día es menos de lo que gastas en reposo ({ NUMBER($resting_kcal, maximumFractionDigits: 0) }): aceptable solo en un mini-cut.
WARNED_DAY_UNDER_RESTING = En tus días más escasos { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal son menos de lo que gastas en reposo ({ NUMBER($resting_kcal, maximumFractionDigits: 0) }): que sean pocos.
WARNED_KIDNEY_PROTEIN = Mucha proteína con una enfermedad renal requiere el visto bueno de tu médico.
WARNED_DIETARY_FAT = La grasa es solo el { NUMBER($share_percent, maximumFractionDigits: 0) } % de lo que comes. A la larga es muy poco.
WARNED_DAY_DIETARY_FAT = Algunos días la grasa es solo el { NUMBER($share_percent, maximumFractionDigits: 0) } % de lo que comes. Que no sea menos.
WARNED_CARBOHYDRATE = Tomas { NUMBER($carbohydrate_g, maximumFractionDigits: 0) } gramos de hidratos al día, menos de los { NUMBER($limit_g, maximumFractionDigits: 0) } recomendados: entrenar puede costarte más.
WARNED_GAIN_RATE = Ganar un { NUMBER($percent, maximumFractionDigits: 2) } % de tu peso por semana es rápido para tu experiencia: más despacio ganas casi el mismo músculo.
WARNED_CUTS_A_YEAR = Sería la definición número { NUMBER($cuts, maximumFractionDigits: 0) } en doce meses. Cuestan tiempo de entrenamiento; ganando más despacio harían falta menos.
WARNED_RECENT_CUT = { $weeks ->
    [0] Tu última definición acaba de terminar.
    [one] Tu última definición acabó hace solo 1 semana.
   *[other] Tu última definición acabó hace solo { NUMBER($weeks, maximumFractionDigits: 0) } semanas.
} Esperar hasta las { NUMBER($limit_weeks, maximumFractionDigits: 0) } semanas suele ser mejor.
BODY_FAT_AT_MINIMUM = Un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa es el mínimo seguro; el límite está cerca del { NUMBER($limit_percent, maximumFractionDigits: 1) } %. No pierdas más; habla con tu médico.
BODY_FAT_LOW = Un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa queda por debajo del { NUMBER($limit_percent, maximumFractionDigits: 1) } %: casi nadie se mantiene bien con tan poca.
UNDER_AGE_NO_TARGET = Con menos de { NUMBER($limit_years, maximumFractionDigits: 0) } años esto es solo una estimación, sin objetivo. Habla con un médico sobre crecimiento y peso.
FAT_FREE_MASS_INDEX_UNUSUAL = Pocas personas tienen tanto músculo para su estatura. Comprueba el peso (¿kilos o libras?), la estatura y la medida.
WEIGHT_IN_POUNDS = Tu peso y tu estatura dan un índice de masa corporal de { NUMBER($bmi, maximumFractionDigits: 1) }. Si no encaja, revisa las unidades: kilos, no libras, y centímetros.
MAINTENANCE_UNUSUAL = Un mantenimiento de { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal al día es { NUMBER($times, maximumFractionDigits: 1) } veces el gasto en reposo; poca gente lo aguanta. ¿Son correctos los datos?
PAL_ABOVE_SUSTAINABLE = Tu actividad equivale a { NUMBER($pal, maximumFractionDigits: 2) } veces el gasto en reposo; más de { NUMBER($limit, maximumFractionDigits: 2) } es difícil de sostener. Comprueba los datos.
BMI_OVERSTATES_WITH_MUSCLE = Estatura y peso no distinguen músculo de grasa: en deportistas dan unos { NUMBER($points, maximumFractionDigits: 1) } puntos de grasa de más.

# Un plan: por qué cada número es el que es.
DEFICIT_CHOSEN = Comes { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día menos de lo que gastas ahora: { size-reason }.
SIZE_OF_DEFICIT = { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día menos: { weeks }, unos { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa y, en el peor caso, { NUMBER($lean_kg, maximumFractionDigits: 1) } kg de tejido magro.
SIZE_OF_GAIN = { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal al día más: { weeks }, unos { NUMBER($lean_kg, maximumFractionDigits: 1) } kg de tejido magro y { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa.
SIZE_OF_GAIN_SPARED = { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal al día más: { weeks }.
DEFICIT_ASKED = Comes { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día menos de lo que gastas ahora, como pediste.
GOAL_SMALL = Tu objetivo es pequeño: en { weeks }, lo más corta que puede ser esta fase, basta un déficit pequeño.
GOAL_FITS_MINI_CUT = Con un mini-cut llegas en { weeks }, con { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día menos de lo que gastas ahora.
DEFICIT_SOLVED = Si comes { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día menos de lo que gastas ahora, pierdes { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa en { weeks }.
WEEKS_SOLVED = Con este déficit hacen falta { weeks } para perder { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa.
WEEKS_DEFAULT = La fase dura { weeks }, el punto medio de lo habitual (de dos a seis), menos lo que ya llevas hecho.
CUT_WEEKS_DEFAULT = La fase dura { weeks }, porque no se dio ni objetivo ni plazo.
WEEKS_TO_EVENT = La fase dura { weeks }, lo más que puede antes de tu evento.
FAT_SOLVED = Con este déficit, cuenta con perder unos { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa en { weeks }.
PLANNED_AS_KEPT = Hasta ahora has cumplido cerca del { NUMBER($percent, maximumFractionDigits: 0) } % de los déficits: cuenta con { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa en { weeks }, no con { NUMBER($planned_kg, maximumFractionDigits: 1) } kg.
FORECAST_AS_KEPT = Hasta ahora has cumplido cerca del { NUMBER($percent, maximumFractionDigits: 0) } % de los déficits planeados. Esta previsión no cuenta con más.
FORECAST_AS_EATEN = El centro vale si comes justo esto. El margen cuenta también con que se cumpla menos del déficit, como es habitual.
PLANNED_AS_EATEN = Se cuenta con todo el plan. Lo habitual es cumplir un { NUMBER($percent, maximumFractionDigits: 0) } % del déficit: perder lo mismo llevaría { NUMBER($usual_weeks, maximumFractionDigits: 0) } semanas, no { weeks }.
SHRINKING_DEFICIT = Tu cuerpo pronto gasta menos, así que el déficit encoge: de { NUMBER($first_kcal, maximumFractionDigits: 0) } kcal al día la primera semana completa a { NUMBER($last_kcal, maximumFractionDigits: 0) } la última.
PROTEIN_WHY = { NUMBER($protein_g_per_kg, maximumFractionDigits: 1) } gramos de proteína por kilo, con entrenamiento de fuerza, protegen tu músculo en un déficit.
NO_TRAINING = Con menos de dos sesiones de fuerza por semana pierdes más músculo. Son la protección más barata que hay.
EASING_IN = { $weeks ->
    [one] La primera semana va
   *[other] Las primeras { $weeks } semanas van
} con medio déficit: pasas menos hambre y tardas otro tanto más.
MAINTENANCE_WHY = Tras la definición te mantienes con { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal al día, { NUMBER($lower_kcal, maximumFractionDigits: 0) } menos que antes: tu cuerpo es más pequeño y se ha adaptado.
MAINTENANCE_NOT_LOWER = Tras la definición te mantienes con { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal al día. Tras comer mucho más hasta hace poco, tu cuerpo no gasta menos que antes.
REBOUND = La báscula subirá unos { NUMBER($carried_kg, maximumFractionDigits: 1) } kg cuando vuelvan glucógeno, agua y comida. Eso no es grasa.
SURPLUS_WHY = Un superávit de { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal al día va con tu experiencia y tu masa magra. Lo que comes se ajusta { every-weeks }.
GAIN_RATE_EXPECTED = Cuenta con ganar cerca del { NUMBER($percent_per_month, maximumFractionDigits: 1) } % de tu peso al mes; un { NUMBER($lean_share, maximumFractionDigits: 0) } % será tejido magro.
GAIN_RATE_EXPECTED_SPARED = Cuenta con ganar cerca del { NUMBER($percent_per_month, maximumFractionDigits: 1) } % de tu peso al mes.
RETURN_CHECKS = Sin agua ganarás { NUMBER($rate_kg, maximumFractionDigits: 2) } kg semanales. Compruébalo el { DATETIME($first_date, dateStyle: "medium") } y el { DATETIME($second_date, dateStyle: "medium") }: si es el doble, quédate con medio superávit.
RETURN_CHECKS_SPARED = Sin agua ganarás { NUMBER($rate_kg, maximumFractionDigits: 2) } kg por semana. Compruébalo el { DATETIME($first_date, dateStyle: "medium") } y el { DATETIME($second_date, dateStyle: "medium") }: si es el doble, consulta al médico.
CEILING_REACHED = El volumen termina con un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa, previsiblemente hacia el { DATETIME($date, dateStyle: "long") }.
CEILING_NOT_REACHED = El volumen terminaría con un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa, al que previsiblemente no llegas en estas semanas.
END_AT_TARGET = Para en cuanto la tendencia muestre { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa perdida, aunque no sea la última semana.
END_AT_LIMIT = Para tras { weeks } como mucho: un mini-cut debe ser corto.
END_CUT_AT_LIMIT = Para tras { weeks } como mucho, y mantente antes de hacer otra cosa.
END_ON_SIGNS = { $periods ->
    [no] Para antes si la fuerza baja en dos sesiones seguidas, o con mal sueño, ánimo bajo o atracones.
   *[yes] Para antes si la fuerza baja en dos sesiones seguidas, o con mal sueño, ánimo bajo, atracones o falta de regla.
}
END_ON_FAST_LOSS = Come más si en dos semanas tu peso baja más del { NUMBER($percent, maximumFractionDigits: 1) } % por semana, pasada el agua de la primera.
TRAIN_IN_DEFICIT = Mantén las cargas altas. Si te recuperas peor, quita primero series.
BREAKS_OFFERED = Puedes pedir pausas: una semana de mantenimiento cada pocas semanas alivia una definición larga y solo cuesta su tiempo.
TRAIN_IN_GAIN = Sube primero carga o repeticiones y después series: el superávit está para entrenar con él.
TRAIN_IN_HOLD = Sigue entrenando según te encuentres: con comida suficiente vuelve la fuerza. Con enfermedad o lesión, primero recupérate.
END_HOLD_ON_TREND = Planea de nuevo antes del final si tu peso sigue bajando, o subiendo tras dos semanas: tu mantenimiento es otro.
END_HOLD_ON_SIGNS = Vuelve a preguntar antes del final si te encuentras mal o pasas hambre todo el día.
WEIGH_DAILY = Pésate a diario en las mismas condiciones y juzga por la media de la semana.
PLAN_PROVISIONAL = Este plan es provisional: sale de fórmulas. Pésate y apunta tu comida a diario: desde el { DATETIME($date, dateStyle: "long") } manda tu registro.
WEIGH_DAILY_SPARED = Acuerda con quien cuida de tu salud cada cuánto te pesas.
PLAN_PROVISIONAL_SPARED = Este plan es provisional: sale solo de fórmulas. Con cuatro semanas de registro es más exacto desde el { DATETIME($date, dateStyle: "long") }.
INFEASIBLE = Ningún plan seguro logra lo pedido. En su lugar ves lo que más se acerca.
INFEASIBLE_NOTHING = Ningún plan seguro logra lo pedido, y por ahora ninguno se acerca.
PAUSED = Primero te mantienes { weeks }; la fase está planeada para tu cuerpo tal como será entonces.
HELD_AT_CEILING = Tu grasa ya está en el máximo de este volumen, así que te mantienes. Antes de un volumen toca perder grasa.
HELD_AFTER_CUT = Tras esta fase tu grasa sigue en el máximo del volumen, así que te mantienes. Antes toca perder más.
HELD_FROM_CEILING = Desde el { DATETIME($date, dateStyle: "long") } te mantienes: tu grasa está en el máximo de este volumen. Antes de otro toca perder grasa.
GAIN_TARGET_PAST_CEILING = Con unos { NUMBER($weight_kg, maximumFractionDigits: 1) } kg tu grasa llega al máximo de este volumen: fíjate ese peso o pierde grasa antes.
GAIN_NOT_NOW = Por ahora no planeamos ningún volumen: come tus calorías de mantenimiento y entrena. Si algo te preocupa, habla con un médico o dietista.
GAIN_OVER = Desde el { DATETIME($date, dateStyle: "long") } comes tu mantenimiento y entrenas: este volumen ya basta. Si algo te preocupa, habla con un médico.
HELD_FROM_CEILING_SPARED = Desde el { DATETIME($date, dateStyle: "long") } comes tus calorías de mantenimiento y entrenas. Si algo te preocupa, habla con un médico o dietista.
GAIN_TARGET_PAST_CEILING_SPARED = Este volumen llega a unos { NUMBER($weight_kg, maximumFractionDigits: 1) } kg y no más.
HOLD_WHY = { $moves ->
    [yes] Tu cuerpo se queda como está con { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal al día ahora y { NUMBER($last_kcal, maximumFractionDigits: 0) } en la última semana.
   *[no] Con { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal al día tu cuerpo se queda como está.
}
HOLD_NEED = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día es lo mínimo que tu cuerpo necesita en estas semanas.
TRAINING_DAYS_MORE = Los días de entrenamiento comes más porque gastas más: hasta { NUMBER($training_kcal, maximumFractionDigits: 0) } kcal. Los de descanso llevan menos y la semana queda igual.
TRAINING_DAYS_LIMITED = La semana más justa cubre un { NUMBER($percent, maximumFractionDigits: 0) } % del gasto de entrenar; en descanso, { why }.
FLEXIBLE_DAYS_PAID = Los otros días comes hasta { NUMBER($paid_kcal, maximumFractionDigits: 0) } kcal menos para compensar tus días libres. La semana queda igual.
CAPPED_FLEXIBLE_DAYS = La semana más justa deja { NUMBER($fits_kcal, maximumFractionDigits: 0) } de { NUMBER($asked_kcal, maximumFractionDigits: 0) } kcal para días libres; otros días, { why }.
HIGHER_DAYS_LOSE_NO_MORE = Los días con más comida hacen la semana más llevadera. No por eso pierdes más grasa.
ALCOHOL_COUNTED = El alcohol cuenta como comida, 7,1 kcal por gramo, y no alimenta músculo. Menos siempre está bien.
MEALS_PROTEIN = En { meals } tomas hasta { NUMBER($protein_g, maximumFractionDigits: 0) } gramos de proteína cada vez. Lo que más cuenta es el total del día.
MEALS_FEWER = Menos comidas y más grandes forman mejor músculo: unos { NUMBER($protein_g, maximumFractionDigits: 0) } gramos de proteína en cada una de { meals }.
PLANT_PROTEIN = Llevas una décima parte más de proteína, porque las plantas dan algo menos de lo que pide el músculo. Combina soja, legumbres y cereales.
PROTEIN_REFERENCE = Tu proteína se calcula para { NUMBER($reference_kg, maximumFractionDigits: 0) } kg, la parte de tu peso que la necesita.
WEEK_BEYOND_PROFILE = Este entrenamiento gasta unas { NUMBER($week_kcal, maximumFractionDigits: 0) } kcal al día y tu perfil cuenta { NUMBER($profile_kcal, maximumFractionDigits: 0) }. Actualiza tu actividad o comerás de menos.
FLEXIBLE_DAY_AFTER_PLAN = Tu día libre del { DATETIME($date, dateStyle: "long") } cae después del plan, que acaba el { DATETIME($last_date, dateStyle: "long") }.
LEVER_BURNS = Con { lever } gastas unas { NUMBER($burnt_kcal, maximumFractionDigits: 0) } kcal diarias. Tu cuerpo ahorra parte; cuentan { NUMBER($kept_kcal, maximumFractionDigits: 0) }, entre { NUMBER($lower_kcal, maximumFractionDigits: 0) } y { NUMBER($upper_kcal, maximumFractionDigits: 0) }.
LEVER_EAT_MORE = Con { lever } puedes comer { NUMBER($more_kcal, maximumFractionDigits: 0) } kcal más, { NUMBER($intake_kcal, maximumFractionDigits: 0) } al día, y pierdes casi la misma grasa.
LEVER_LOSE_MORE = Con { lever } y la comida prevista pierdes unos { NUMBER($fat_kg, maximumFractionDigits: 1) } kg más de grasa.
LEVER_AVAILABILITY = Con { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal te quedan { NUMBER($observed, maximumFractionDigits: 1) } kcal por cada kilo que no es grasa; con el plan solo, { NUMBER($planned, maximumFractionDigits: 1) }.
LEVER_TOO_MUCH = No añadas { lever } con la comida prevista: te quedaría muy poco. Come más para ello.
LEVER_TOO_MUCH_EVEN_FED = No añadas { lever } en esta fase: aun comiendo más te quedaría muy poco.
LEVER_ASK_FIRST = Moverte más podría ayudar. Por tus respuestas de salud, pregunta antes a tu médico cuánto es seguro.
BREAKS_WHY = Las pausas hacen más llevadera una definición larga. No te hacen perder más grasa, y la báscula sube mientras duran.
CUT_RESET = Lo que comes se ajusta a las { $first_weeks } semanas y luego { every-weeks }, para que el déficit aguante mientras tu cuerpo cambia.
GAIN_TARGET_TOO_FAR = Ningún volumen dentro de sus límites llega a este peso en { weeks }: llega a unos { NUMBER($weight_kg, maximumFractionDigits: 1) } kg.
GOAL_ALREADY_MET = Ya has cumplido el objetivo: no hay nada que perder.
PHASE_USED_UP = Este mini-cut ya dura { weeks }, lo máximo: pasa a mantenimiento, o planea una definición más larga.
CUT_NEEDS_READING = Con una grasa calculada por estatura y peso no empieza ninguna definición. Mídela (pliegues, perímetros, DXA) y pregunta de nuevo.
CUT_NO_ROOM = Ninguna definición de este tipo cabe en las semanas que quedan.
CUT_TOO_SMALL = Los límites seguros solo te dejan { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal menos al día: { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa en { weeks }. Ninguna báscula lo distingue del agua.
GAIN_NO_ROOM = Hasta lo mínimo que debes comer te haría ganar más rápido de lo debido, así que te mantienes.
GAIN_NEEDS_TRAINING = Un superávit solo da músculo con entrenamiento de fuerza: empieza antes a entrenar.
TARGET_WRONG_SIDE = Con esta cantidad te alejas del objetivo, o no llegas a él.
TARGET_NEEDS_INTAKE = Para llegar a tu objetivo en esa fecha comerías { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día.
TARGET_BEYOND_RAIL = Menos de { NUMBER($least_intake_kcal, maximumFractionDigits: 0) } kcal al día no es seguro: { why }.
TARGET_TOO_FAST_GAIN = Llegar a tiempo sería ganar más del { NUMBER($percent, maximumFractionDigits: 2) } % de tu peso por semana.
TARGET_UNREACHABLE = Ninguna cantidad constante llega a tu objetivo en esa fecha.

# Qué viene ahora.
DECISION_NO_DEFICIT = No recomendamos ninguna dieta. Come tus calorías de mantenimiento y entrena; si comida o peso te preocupan, habla con un médico o dietista.
DECISION_UNDER_AGE = Con menos de { NUMBER($limit_years, maximumFractionDigits: 0) } años no se recomienda ninguna dieta: come para crecer y entrenar, y consulta al médico si te preocupa el peso.
DECISION_CHOICES_LEFT_OUT = Lo que deseas para tu cuerpo no cuenta en esta respuesta.
DECISION_CUT_REFUSED = Tocaría una definición, pero por ahora una regla de seguridad la impide. Hasta resolverlo: { phase }.
DECISION_CUT_TOO_SMALL = Tocaría una definición, pero lo que hoy es seguro para ti no compensa las semanas. Hasta que cambie: { phase }.
DECISION_CUT_REFUSED_UNDER_WAY = La definición en curso no sigue, por la razón dada. En su lugar: { phase }.
DECISION_CUT_TOO_LONG = Llevas { weeks } en déficit, ya es bastante: mantente ahora { bridge-weeks }, quede lo que quede por perder.
DECISION_CUT_DONE = Tu definición está hecha: estás en el { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa, y basta con el { NUMBER($target_percent, maximumFractionDigits: 1) } %. Mantente ahora { bridge-weeks }.
DECISION_CUT_UNDER_WAY = Tu definición sigue: estás en el { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa, y el objetivo es el { NUMBER($target_percent, maximumFractionDigits: 1) } %.
DECISION_CUT_JUST_ENDED = { $weeks ->
    [0] Tu definición acaba de terminar.
   *[other] Tu última definición acabó hace { weeks }.
} Mantente { bridge-weeks } mientras vuelven glucógeno y agua.
DECISION_CUT_AGAIN = Tu última definición no te quitó nada. Mantente { bridge-weeks } y apunta cada comida: después volvemos a mirarlo.
DECISION_CUT_TOO_RECENT = { $weeks ->
    [0] Tu última definición acaba de terminar.
   *[other] Tu última definición acabó hace { weeks }.
} Tras { NUMBER($limit_weeks, maximumFractionDigits: 0) } semanas, el { DATETIME($date, dateStyle: "long") }, puede considerarse otra.
DECISION_TOO_MANY_CUTS = { $cuts ->
    [one] Has acabado una definición
   *[other] Has acabado { $cuts } definiciones
} en doce meses. De momento basta; la próxima puede empezar el { DATETIME($date, dateStyle: "long") }.
DECISION_EVENT_READY = Para tu evento basta un { NUMBER($target_percent, maximumFractionDigits: 1) } % de grasa, y estás en el { NUMBER($fat_percent, maximumFractionDigits: 1) } %: no hace falta definición.
DECISION_EVENT_TOO_NEAR = { $weeks ->
    [0] Tu evento es en menos de una semana:
   *[other] Tu evento es en { weeks }:
} muy cerca para una definición y su semana de reposo. Mantente: solo perderías agua.
DECISION_EVENT_LATER = Tu evento es en { weeks }. Su definición dura { cut-weeks }, más una de reposo: empiézala el { DATETIME($date, dateStyle: "long") }.
DECISION_EVENT_NOW = Tu evento es en { weeks }. Su definición dura cerca de { cut-weeks }, más una de reposo: ha llegado la hora.
DECISION_EVENT_HOLD_FIRST = Lo que ganaras antes de tu evento habría que perderlo otra vez: mantente hasta su definición, hacia el { DATETIME($date, dateStyle: "long") }.
DECISION_EVENT_OUT_OF_REACH = Ninguna definición segura llega al { NUMBER($target_percent, maximumFractionDigits: 1) } % para el evento. Esta se acerca cuanto es seguro, hasta cerca del { NUMBER($end_percent, maximumFractionDigits: 1) } %.
DECISION_EVENT_FAR = Tu evento está a más de { weeks }: aún no cuenta.
DECISION_EVENT_SETS_DATE = Aquí decide la fecha de tu evento.
DECISION_EVENT_LEAVES_TIME = Faltan { weeks } para tu evento: hay tiempo para esta definición ahora y para preguntar de nuevo antes.
DECISION_UNMEASURED = Solo se calculó con estatura y peso, pero con tu tamaño difícilmente es menos. Mídela (cinta, pliegues, DXA) para saber dónde acaba esto.
DECISION_MEASURE_FIRST_BMI = Tu grasa solo se calculó por estatura y peso. Mídela (pliegues, perímetros, DXA) y pregunta de nuevo. Hasta entonces: { phase }.
DECISION_MEASURE_FIRST_ERROR = Tu medida del { NUMBER($fat_percent, maximumFractionDigits: 1) } % puede fallar { NUMBER($error_points, maximumFractionDigits: 1) } puntos: demasiado para una definición. Repítela con mejor método. Hasta entonces: { phase }.
DECISION_WANTS_HOLD = Quieres mantenerte, y nada lo desaconseja.
DECISION_WANTS_HOLD_OVER = Quieres mantenerte, pues mantente. Para llegar a la grasa que elegiste haría falta una definición desde el { NUMBER($due_percent, maximumFractionDigits: 1) } %.
DECISION_NEAR_UNDERWEIGHT = Un índice de masa corporal de { NUMBER($bmi, maximumFractionDigits: 1) } está cerca del bajo peso. Lo primero es mantenerte; con menos de { NUMBER($limit, maximumFractionDigits: 1) } no hay definición posible.
DECISION_LEAN_ENOUGH = Con un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa ya tienes poca: una definición te quitaría entrenamiento y no te daría nada. { advice }
DECISION_NOT_YET = Aún no: con un { NUMBER($fat_percent, maximumFractionDigits: 1) } % un mini-cut cuesta más músculo y dieta de lo que vale en { weeks }. { advice }
DECISION_NONE_DUE = Con un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa aún no toca una definición. { advice }
DECISION_NO_DUE = En tu margen de grasa y cerca de él no compensa ninguna definición.
DECISION_CUT_DUE = Ahora es mejor una definición: estás en el { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa, y desde el { NUMBER($due_percent, maximumFractionDigits: 1) } % compensa.
DECISION_CUT_FOR_LEANNESS = Te gustaría tener menos grasa, y es razón suficiente: con un { NUMBER($fat_percent, maximumFractionDigits: 1) } % una definición te conviene.
DECISION_TRADE = En { weeks }, { best-phase } vale para ti unos { NUMBER($ahead_kg, maximumFractionDigits: 1) } kg de tejido magro más que { other-phase }, con una probabilidad del { NUMBER($probability_percent, maximumFractionDigits: 0) } %.
DECISION_TRADE_CLEAR = En { weeks }, { best-phase } vale más para ti que { other-phase }, con una probabilidad del { NUMBER($probability_percent, maximumFractionDigits: 0) } %.
DECISION_NEAR_DUE = Estás cerca del { NUMBER($due_percent, maximumFractionDigits: 1) } % de grasa, donde toca una definición: unas semanas antes o después cambian poco.
DECISION_CLOSE = En { weeks } nada es claramente mejor: { best-phase } supera a { other-phase } en el { NUMBER($probability_percent, maximumFractionDigits: 0) } % de los casos. Elige lo que prefieras.
DECISION_CUTS_CLOSE = En { weeks }, { best-phase } y { other-phase } vienen a ser lo mismo: elige la duración que prefieras.
DECISION_LONGER_CUT = Un mini-cut se queda corto: hacen falta { weeks }.
DECISION_LONG_WAY = Esta definición no llega hasta el final: acaba tras { weeks }, hacia el { NUMBER($end_percent, maximumFractionDigits: 1) } %. Después pregunta de nuevo.
DECISION_SHORTER_PAYS = Llegar al { NUMBER($target_percent, maximumFractionDigits: 1) } % de una vez no compensa: acaba esta tras { weeks }, hacia el { NUMBER($end_percent, maximumFractionDigits: 1) } %, y pregunta de nuevo.
DECISION_WITHIN_HEALTHY = Un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa es sano para tu edad y sexo (del { NUMBER($lower_percent, maximumFractionDigits: 0) } al { NUMBER($upper_percent, maximumFractionDigits: 0) } %): definir es por estética, no por salud.
DECISION_BELOW_HEALTHY = Con un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa no hay nada que perder. Si tu aspecto te hace infeliz, habla con alguien cercano o tu médico.
DECISION_ABOVE_HEALTHY = Un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa supera el margen sano para tu edad y sexo, que acaba en el { NUMBER($upper_percent, maximumFractionDigits: 0) } %.
DECISION_HISTORY_UNKNOWN = No se conocen tus fases anteriores. Indícalas, y contarán una definición reciente o un patrón.
DECISION_GAIN_SLOWLY = Gana despacio, con { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal al día sobre el mantenimiento.
PATTERN_CYCLES = En { weeks } un volumen rápido acabó en definición { $cycles ->
    [one] una vez
    [2] dos veces
   *[other] { $cycles } veces
}. De esas semanas pasaste { $dieting_weeks } a dieta.
PATTERN_COST = Ganar despacio durante { weeks } habría dado unos { NUMBER($lean_kg, maximumFractionDigits: 1) } kg más de tejido magro (de { NUMBER($lower_kg, maximumFractionDigits: 1) } a { NUMBER($upper_kg, maximumFractionDigits: 1) }). Ve más despacio.
PATTERN_SAME_LEAN = Ganar despacio habría dado casi el mismo tejido magro (de { NUMBER($lower_kg, maximumFractionDigits: 1) } a { NUMBER($upper_kg, maximumFractionDigits: 1) } kg más), con menos definiciones. Ve más despacio.
PATTERN_NO_LEAN = Subiendo y bajando has ganado al menos el mismo tejido magro; el precio fue la dieta. Ganar más despacio pide menos definiciones.
PATTERN_WEEKS = Ganando despacio habrías tenido el mismo tejido magro { weeks } antes.
PATTERN_ASSUMED = { $phases ->
    [one] Una fase no tenía pesos y se tomó
   *[other] { $phases } fases no tenían pesos y se tomaron
} con el tamaño habitual.
PATTERN_FAT = Subir y bajar te dejó con { NUMBER($fat_kg, maximumFractionDigits: 1) } kg menos de grasa. Ganando despacio bastaría con { $slow_weeks ->
    [one] una semana
   *[other] unas { $slow_weeks } semanas
} de dieta, no { $dieting_weeks }.
PATTERN_NO_FAT = Subir y bajar te dejó, pese a tanta dieta, { NUMBER($fat_kg, maximumFractionDigits: 1) } kg más de grasa que ganar despacio.
CHANGE_DUE_DATE = A este ritmo llegas al { NUMBER($due_percent, maximumFractionDigits: 1) } % de grasa, donde toca una definición, hacia el { DATETIME($date, dateStyle: "long") }.
CHANGE_DUE_BEYOND = Una definición toca al { NUMBER($due_percent, maximumFractionDigits: 1) } % de grasa, lo que no se espera en { weeks }.
CHANGE_DUE_BELOW = Por debajo del { NUMBER($due_percent, maximumFractionDigits: 1) } % de grasa la respuesta sería: aún no.
CHANGE_READING = Tu medición puede desviarse { NUMBER($error_points, maximumFractionDigits: 1) } puntos: con una probabilidad del { NUMBER($probability_percent, maximumFractionDigits: 0) } % estás en realidad al otro lado del límite.
CHANGE_READING_NEEDED = Solo con una medición real de grasa podría considerarse una definición.
CHANGE_SURER_READING = Si un método mejor dice lo mismo, bastará para una definición.
CHANGE_MOTIVE = Si te gustaría tener menos grasa, es razón suficiente: una definición tocaría desde el { NUMBER($due_percent, maximumFractionDigits: 1) } %.
CHANGE_MOTIVE_ON = Si te gustaría tener menos grasa, es razón suficiente: la definición podría seguir hasta el { NUMBER($target_percent, maximumFractionDigits: 1) } %.
CHANGE_UNDERWEIGHT = Con un índice de masa corporal de menos de { NUMBER($limit, maximumFractionDigits: 1) } no hay definición posible, sea cual sea tu grasa.
CHANGE_CONTENT = Si estás a gusto como estás, la definición puede esperar hasta el { NUMBER($due_percent, maximumFractionDigits: 1) } % de grasa.
CHANGE_CONTENT_ENDS = Si estás a gusto como estás, la definición puede acabar ya.
CHANGE_CUT_ENDS = Tu definición acaba al { NUMBER($target_percent, maximumFractionDigits: 1) } % de grasa, o el { DATETIME($date, dateStyle: "long") } como tarde.
CHANGE_TIME = Una definición vuelve a considerarse desde el { DATETIME($date, dateStyle: "long") }.
CHANGE_EVENT_START = La definición para tu evento empieza el { DATETIME($date, dateStyle: "long") } como tarde.
CHANGE_NO_EVENT = Sin el evento la respuesta sería: { phase }.
CHANGE_SCREENING = Solo con las preguntas de salud respondidas podría considerarse una definición.
CHANGE_SCREENING_GAIN = Solo con las preguntas de salud respondidas podría considerarse ganar o definir.
CHANGE_CLEARANCE = Solo con un visto bueno médico podría considerarse una definición.
CHANGE_TRAINING = Con dos o más sesiones de fuerza por semana compensaría ganar, aunque sumes grasa.
CHANGE_MOVE_MORE = Si caminas o pedaleas más gastas más, y puede caber una definición que compense.

# Tu registro.
LOG_UNIT_MIX_UP = El peso { NUMBER($given, maximumFractionDigits: 1) } del { DATETIME($date, dateStyle: "long") } { $others ->
    [0] solo encaja en otra unidad y
    [one] y otro solo encajan en otra unidad; el primero
   *[other] y otros { $others } solo encajan en otra unidad; el primero
} se lee como { NUMBER($read_kg, maximumFractionDigits: 1) } kg.
LOG_WEIGHT_SET_ASIDE = Los { NUMBER($given, maximumFractionDigits: 1) } kg del { DATETIME($date, dateStyle: "long") } no encajan con los { NUMBER($expected_kg, maximumFractionDigits: 1) } kg de esos días y no cuentan. ¿De otra persona?
LOG_WEIGHT_DECIMAL = Los { NUMBER($given, maximumFractionDigits: 1) } kg del { DATETIME($date, dateStyle: "long") } no cuentan; esos días pesabas unos { NUMBER($expected_kg, maximumFractionDigits: 1) } kg: ¿está bien la coma?
LOG_WEIGHT_TWICE = { $count ->
    [one] Un pesaje llegó dos veces y cuenta
   *[other] { $count } pesajes llegaron dos veces y cuentan
} una.
LOG_INTAKE_TWICE = { $others ->
    [0] Para el { DATETIME($date, dateStyle: "long") } llegaron dos cantidades distintas y no cuenta ninguna
    [one] Para el { DATETIME($date, dateStyle: "long") } y otro día llegaron varias cantidades y no cuenta ninguna
   *[other] Para el { DATETIME($date, dateStyle: "long") } y otros { $others } días llegaron varias cantidades y no cuenta ninguna
}: envía una del día entero.
LOG_INTAKE_KILOJOULES = Desde el { DATETIME($date, dateStyle: "long") }, { $count ->
    [one] una cantidad solo encaja contigo en kilojulios y no cuenta
   *[other] { $count } cantidades solo encajan contigo en kilojulios y no cuentan
}: envía kilocalorías.
LOG_INTAKE_SET_ASIDE = Las { NUMBER($given_kcal, maximumFractionDigits: 0) } kcal del { DATETIME($date, dateStyle: "long") } no cuentan: ¿está bien la coma?
LOG_STEPS_TWICE = { $count ->
    [one] Para un día ({ DATETIME($date, dateStyle: "long") }) llegaron dos cifras distintas de pasos y no cuenta
   *[other] Para { $count } días desde el { DATETIME($date, dateStyle: "long") } llegaron dos cifras distintas de pasos y no cuentan
}: envía una por día.
LOG_STEPS_SET_ASIDE = { $count ->
    [one] Los pasos del { DATETIME($date, dateStyle: "long") } no cuentan
   *[other] Los pasos de { $count } días desde el { DATETIME($date, dateStyle: "long") } no cuentan
}: son demasiados para un día, o no llevabas el contador.
LOG_GAP = Tras el { DATETIME($date, dateStyle: "long") } falta el peso de { days }.
LOG_PARTIAL_INTAKE = { $count ->
    [one] Un día apuntado a medias cuenta como no apuntado
   *[other] { $count } días apuntados a medias cuentan como no apuntados
}.
LOG_INTAKE_NOTHING = { $count ->
    [one] Un día con 0 kcal cuenta como no apuntado
   *[other] { $count } días con 0 kcal cuentan como no apuntados
}.
LOG_INTAKE_MISSING = De { days }, { $count ->
    [one] uno no tiene
   *[other] { $count } no tienen
} la comida completa; se toma lo habitual, con menos exactitud.
LOG_NO_INTAKE = No hay comida apuntada que cuente: la tendencia del peso se lee, pero cuánto necesitas es menos seguro.
LOG_UNDER_RESTING = Apuntas menos de lo que gastas en reposo: falta comida ({ NUMBER($unlogged_percent, maximumFractionDigits: 0) } %), fallan las fórmulas ({ NUMBER($equation_percent, maximumFractionDigits: 0) } %) o enfermedad ({ NUMBER($illness_percent, maximumFractionDigits: 0) } %; consulta al médico).
TREND_TOO_EARLY = Es pronto para decirlo: pésate y apunta durante { more-days }.
TREND_TOO_SPARSE = Es pronto para decirlo, y no bastaría con { more-days }: apunta también lo que comes.
TREND_OUTLIER = El peso del { DATETIME($date, dateStyle: "long") } queda { NUMBER($off_kg, maximumFractionDigits: 1) } kg por { $side ->
    [under] debajo
   *[over] encima
} de los días anteriores, así que cuenta menos.
TREND_WATER_JUMP = El { DATETIME($date, dateStyle: "long") } tu peso saltó { NUMBER($jump_kg, maximumFractionDigits: 1) } kg de golpe: es agua, que se irá, u otra báscula u otra hora.
TREND_LOGGING_CHANGED = Desde cerca del { DATETIME($date, dateStyle: "long") } quizá apuntas mayor o menor parte de lo que comes que antes ({ NUMBER($percent, maximumFractionDigits: 0) } % de seguridad).
SETTLE_WEIGH_FOOD = Así se aclara: pesa y apunta durante siete días todo lo que comes y bebes, también el fin de semana.
SETTLE_WEIGH_FOOD_SPARED = Tu peso y tu registro no coinciden. Háblalo con un médico o dietista.
SETTLE_WEIGH_ON = Así se aclara: pésate a diario diez días más. El agua sin causa se va; la grasa y el músculo no.
SETTLE_WEIGH_ON_SPARED = Diez días más lo dirán: el agua sin causa se va y el tejido no. No te peses más a menudo por eso.
TREND_STALE = Tu último pesaje fue hace { days }.
LOG_GOES_PAST = Tu registro llega al { DATETIME($date, dateStyle: "long") }, mucho después del { DATETIME($from_date, dateStyle: "long") }: ¿hay alguna fecha mal?
KNOWN_LONG_AGO = Lo último que se sabe de ti es del { DATETIME($date, dateStyle: "long") }: pésate y apunta dos semanas, y vuelve a preguntar.
LOG_WEIGHT_COUNTS = Tu perfil dice { NUMBER($profile_kg, maximumFractionDigits: 1) } kg, pero tu registro acaba en { NUMBER($logged_kg, maximumFractionDigits: 1) } kg, y eso cuenta aquí. Pon al día tu perfil.
STATE_WEIGHT_APART = Tu perfil dice { NUMBER($profile_kg, maximumFractionDigits: 1) } kg, pero tu último peso conocido es { NUMBER($known_kg, maximumFractionDigits: 1) } kg, y ese cuenta aquí. ¿Era tuyo?
TREND_UNDER_LOGGED = Tu registro contiene cerca de un { NUMBER($percent, maximumFractionDigits: 0) } % menos de lo esperado para tu cuerpo: guíate por las cantidades de tu registro.
TREND_STEPS_FEWER = Has dado unos { NUMBER($steps, maximumFractionDigits: 0) } pasos al día menos que en las semanas anteriores. Por eso tu cuerpo gasta unas { NUMBER($kcal, maximumFractionDigits: 0) } kcal menos al día.
TREND_STEPS_MORE = Has dado unos { NUMBER($steps, maximumFractionDigits: 0) } pasos al día más que en las semanas anteriores. Por eso tu cuerpo gasta unas { NUMBER($kcal, maximumFractionDigits: 0) } kcal más al día.
TREND_STEPS_STEADY = Caminas lo mismo, unos { NUMBER($steps, maximumFractionDigits: 0) } pasos al día: caminar no explica ningún cambio de tu peso.

# Una fase frente a su plan.
REVIEW_TOO_EARLY = Es pronto para decirlo: la báscula aún muestra agua. { $goes_on ->
    [yes] Sigue el plan; pésate
   *[no] Pésate
} y apunta durante { more-days }.
REVIEW_FEW_WEIGHINGS = Esta fase tiene hasta ahora { $weighings ->
    [one] un pesaje
   *[other] { $weighings } pesajes
}, demasiado pocos para juzgar. { $goes_on ->
    [yes] Sigue el plan; pésate
   *[no] Pésate
} y apunta durante { more-days }.
REVIEW_NOT_WEIGHED = Tu último pesaje fue hace { days }, demasiado para juzgar. { $goes_on ->
    [yes] Sigue el plan; pésate
   *[no] Pésate
} y apunta durante { more-days }.
REVIEW_WITHIN_INTERVAL = Sin agua tu peso ha cambiado { NUMBER($observed_kg, maximumFractionDigits: 1) } kg; el plan espera hasta ahora de { NUMBER($lower_kg, maximumFractionDigits: 1) } a { NUMBER($upper_kg, maximumFractionDigits: 1) } kg.
REVIEW_NEAR_INTERVAL = Sin agua tu peso ha cambiado { NUMBER($observed_kg, maximumFractionDigits: 1) } kg. El plan espera de { NUMBER($lower_kg, maximumFractionDigits: 1) } a { NUMBER($upper_kg, maximumFractionDigits: 1) } kg: tan cerca puede ser casualidad.
REVIEW_OUTSIDE_INTERVAL = Sin agua tu peso ha cambiado { NUMBER($observed_kg, maximumFractionDigits: 1) } kg. El plan esperaba de { NUMBER($lower_kg, maximumFractionDigits: 1) } a { NUMBER($upper_kg, maximumFractionDigits: 1) } kg: fuera de lo planeado ({ NUMBER($probability_percent, maximumFractionDigits: 0) } % de seguridad).
REVIEW_STILL_OUTSIDE_INTERVAL = Sin agua tu peso ha cambiado { NUMBER($observed_kg, maximumFractionDigits: 1) } kg. El plan esperaba de { NUMBER($lower_kg, maximumFractionDigits: 1) } a { NUMBER($upper_kg, maximumFractionDigits: 1) } kg: sigue fuera, aunque con menos claridad.
REVIEW_CONTRADICTED = Báscula y plan se contradicen: tu peso cambió { NUMBER($weight_kg, maximumFractionDigits: 1) } kg en vez de { NUMBER($planned_kg, maximumFractionDigits: 1) } kg. Registro y plato no coinciden, o es agua.
REVIEW_EVENT_WATER = Por { event }, unos { NUMBER($water_kg, maximumFractionDigits: 1) } kg del cambio de tu peso son agua{ $explains ->
    [yes] . Eso lo explica.
   *[no] , pero no todo.
}
REVIEW_ATE_MORE = Has apuntado { NUMBER($difference_kcal, maximumFractionDigits: 0) } kcal al día más de lo planeado{ $goes_on ->
    [yes] : intenta ceñirte al plan.
    [steadily] , semana tras semana. Si son ciertos días, inclúyelos en el plan: los demás dejan sitio.
   *[no] .
}
REVIEW_ATE_LESS = Has apuntado { NUMBER($difference_kcal, maximumFractionDigits: 0) } kcal al día menos de lo planeado.
REVIEW_PLAN_STANDS = El plan sigue igual: bajar la meta no ayuda mientras comas más. ¿Es demasiado duro? Pide uno más suave.
REVIEW_EAT_THE_PLAN = El plan sigue igual: come primero lo que indica. ¿Es demasiado? Dilo, y planea de nuevo.
REVIEW_KEPT_LATELY = En la última semana seguiste el plan: continúa así y se notará.
REVIEW_NO_INTAKE = En esta fase no hay ningún día completo apuntado. Apunta una semana entera: solo así se puede ajustar lo que comes.
REVIEW_AS_TOLD = Apenas hay comida apuntada: solo habla tu peso. Si sigues como ahora, un plan de unas { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal al día lo mantendría.
REVIEW_NEEDS_LESS = Según tu registro comiste lo planeado, pero el mantenimiento parece de { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal, no { NUMBER($planned_kcal, maximumFractionDigits: 0) }. Falta comida por apuntar, o necesitas menos.
REVIEW_NEEDS_MORE = Según tu registro comiste lo planeado, pero el mantenimiento parece de { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal al día, no las { NUMBER($planned_kcal, maximumFractionDigits: 0) } del plan.
REVIEW_STEPPED = { $direction ->
    [less] Come desde ahora { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal al día menos de lo previsto
   *[more] Come desde ahora { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal al día más de lo previsto
}. Es un paso; la próxima revisión dirá si hace falta otro.
REVIEW_CORRECTION_HELD = El objetivo pediría comer otras { NUMBER($missing_kcal, maximumFractionDigits: 0) } kcal menos al día, y no es seguro: { why }.
REVIEW_RAISED_BY_RAIL = Come { NUMBER($correction_kcal, maximumFractionDigits: 0) } kcal al día más, por seguridad: { why }.
REVIEW_MADE_UP = Lo que faltaba ha vuelto: lo que comías de más por ello se quita otra vez.
REVIEW_TOO_LATE = { $days ->
    [one] Solo queda un día
   *[other] Solo quedan { $days } días
}, muy poco para que un cambio cuente: come como hasta ahora.
REVIEW_PURPOSE_MET = Has perdido unos { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa, y el objetivo eran { NUMBER($target_kg, maximumFractionDigits: 1) } kg: acaba la fase.
REVIEW_CEILING_MET = Tu grasa está cerca del { NUMBER($fat_percent, maximumFractionDigits: 1) } %, y este volumen acaba en el { NUMBER($ceiling_percent, maximumFractionDigits: 1) } %.
REVIEW_LIMIT_REACHED = Este mini-cut dura ya { days }, y el máximo son { $limit_days }: acábalo, con objetivo o sin él.
REVIEW_GETS_NOWHERE = En { weeks } esta fase apenas ha quitado grasa. Más de lo mismo no lo cambia: mejor termínala ahora.
REVIEW_START_AGAIN = Come cuatro semanas a nivel de mantenimiento. Empieza de nuevo cuando las semanas siguientes lo permitan: un déficit menor y cada comida apuntada.
REVIEW_START_AGAIN_SETTLED = Come ahora tu mantenimiento. Antes de volver a perder grasa, aclara con un médico o un servicio de trastornos alimentarios lo que dudabas.
REVIEW_PHASE_OVER = La fase ha terminado.
REVIEW_TOO_LITTLE_TO_JUDGE = Hubo poco tiempo, o pocos pesajes, para juzgar esta fase.
REVIEW_NOT_SAFE = Un déficit ya no es seguro para ti: acaba la fase.
REVIEW_NO_ROOM = Bajo tu mantenimiento de hoy no queda déficit útil: { why }. Acaba la fase.
REVIEW_STOPPED_BY_RAIL = Los días que vienen no serían seguros: acaba la fase.
REVIEW_SHORTEN = A este ritmo llegas al objetivo hacia el { DATETIME($date, dateStyle: "long") }, { days } antes del final previsto.
REVIEW_EXTEND = Necesitas hasta cerca del { DATETIME($date, dateStyle: "long") }, { days } más de lo planeado.
REVIEW_OUT_OF_REACH = Tal como va, espera { NUMBER($fat_kg, maximumFractionDigits: 1) } de { NUMBER($target_kg, maximumFractionDigits: 1) } kg de grasa al final de esta fase.
REVIEW_GOAL_TOO_FAR = Incluso hasta el { DATETIME($date, dateStyle: "long") }, su final más tardío, esta fase quita unos { NUMBER($fat_kg, maximumFractionDigits: 1) } de { NUMBER($target_kg, maximumFractionDigits: 1) } kg de grasa: mejor termínala.
REVIEW_LOST_FAST = En las dos últimas semanas perdiste un { NUMBER($percent, maximumFractionDigits: 1) } % de tu peso por semana, más del { NUMBER($limit, maximumFractionDigits: 1) } %.
REVIEW_EATEN_UNDER_RAIL = Durante dos semanas apuntaste { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día. Come al menos { NUMBER($least_kcal, maximumFractionDigits: 0) }: { why }.
REVIEW_REBOUND = De vuelta al mantenimiento la báscula subirá unos { NUMBER($carried_kg, maximumFractionDigits: 1) } kg en dos semanas: glucógeno, agua y comida. Eso no es grasa.
REVIEW_PAST_RAIL = Un paso no basta para hacer seguro este plan: { why }. Acábalo y planea de nuevo.
REVIEW_SHORTENED_BY_RAIL = El plan acaba hacia el { DATETIME($date, dateStyle: "long") }; después no sería seguro: { why }.
REVIEW_GAIN_PAST_CEILING = Tal como está planeado, este volumen supera el { NUMBER($limit_percent, maximumFractionDigits: 2) } % de tu peso por semana: acábalo y planea uno más lento.
REVIEW_GAIN_ENOUGH = Este volumen ya basta por ahora: termínalo, come tus calorías de mantenimiento y sigue entrenando.
REVIEW_GAIN_OVERRUN = En { weeks } has ganado unos { NUMBER($gained_kg, maximumFractionDigits: 1) } kg. Más de { NUMBER($most_kg, maximumFractionDigits: 1) } kg en ese tiempo no da más músculo: mejor termina ahora este volumen.
REVIEW_GAIN_ANEW = Si aún quieres ganar, planéalo de nuevo desde aquí, con una cantidad que puedas cumplir.
REVIEW_GAIN_SLOWED = Ganar más de un { NUMBER($percent, maximumFractionDigits: 2) } % de tu peso por semana no da más músculo: el tuyo se frena para quedar por debajo.
REVIEW_DEFICIT_CAPPED = Esta fase no admite menos comida: { why }.
REVIEW_UNEXPLAINED_LOSS = En { days } has perdido un { NUMBER($percent, maximumFractionDigits: 1) } % de tu peso sin planearlo. Si no lo buscabas, ve al médico. { $raised ->
    [yes] Come más, en pasos.
   *[no] Come lo planeado.
}
REVIEW_LOSS_BREASTFEEDING = En { days } perdiste un { NUMBER($percent, maximumFractionDigits: 1) } % de peso, normal tras un parto; si no, pregunta a tu matrona. Come al menos lo planeado.
REVIEW_AS_EATEN_SO_FAR = Has apuntado el { NUMBER($percent, maximumFractionDigits: 0) } % de lo planeado: los próximos días se prevén como has comido hasta ahora.
REVIEW_AS_PLANNED = Según tu registro gastas menos, pero la báscula no lo confirma: la previsión mantiene { NUMBER($maintenance_kcal, maximumFractionDigits: 0) } kcal al día.
REVIEW_IN_PREGNANCY = Lo que se gana en el embarazo no se mide con un plan: lo sigue tu matrona o equipo médico.
REVIEW_EXPECTED_IN_PREGNANCY = Hasta { NUMBER($expected_kg, maximumFractionDigits: 1) } kg de lo ganado son propios del embarazo y no significan comer de más. No se te baja la comida.
REVIEW_LATER_ENTRIES = { $count ->
    [one] Un dato es posterior a la fase: cuenta
   *[other] { $count } datos son posteriores a la fase: cuentan
} a partir de ahora, pero no para esta revisión.
REVIEW_WINDOW_SHORTER = Tu primer pesaje llega { days } después del inicio; hasta entonces vale la previsión del plan.
REVIEW_WAITS = Una lectura de tu registro pide un cambio, y la siguiente debe confirmarlo. Sigue el plan hasta el { DATETIME($date, dateStyle: "long") }.
REVIEW_CANNOT_WAIT = Este cambio no juzga tu plan: mantiene tu comida dentro de límites seguros, y eso no espera.
REVIEW_STEP_MEANWHILE = Dos revisiones coinciden, así que este paso no espera tu respuesta. Dala de todos modos: de ella depende el siguiente.
REVIEW_MAY_STOP_EARLY = Vas por delante del plan: sigue y, si quieres, acaba { days } antes.{ $enough ->
    [yes] {" "}No hace falta comer más.
   *[no] {""}
}
REVIEW_WAITS_FOR_EVENT = Por { event } tu peso dice poco hasta el { DATETIME($date, dateStyle: "long") }. Sigue pesándote y apuntando; antes nada cambia.

# La pregunta que aclara en qué se contradicen báscula y registro, y qué significa su respuesta.
QUESTION_WEIGH_FOOD = Pesa y apunta cuanto comes y bebes hasta el { DATETIME($date, dateStyle: "long") }, fines de semana incluidos, y pésate cada día.
QUESTION_WITH_CLINICIAN = Tu peso y tu registro no coinciden. Háblalo con un médico o dietista, como tarde el { DATETIME($date, dateStyle: "long") }.
BODY_FAT_AT_MINIMUM_SPARED = Tu cuerpo no tiene reservas: no pierdas más peso y habla con un médico o dietista.
TALK_TO_WHO_CARES = Habla de tu comida y tu peso con quien cuida de tu salud.
QUESTION_OIL_AND_ALCOHOL = Hasta el { DATETIME($date, dateStyle: "long") } pesa y apunta también aceite, untables, bebidas, alcohol y picoteo: es lo primero que falta.
QUESTION_WATER = ¿Empezó algo estas cuatro semanas: { $creatine ->
    [yes] creatina,{" "}
   *[no] {""}
}{ $salt ->
    [yes] sal,{" "}
   *[no] {""}
}{ $training ->
    [yes] entrenamiento,{" "}
   *[no] {""}
}{ $illness ->
    [yes] enfermedad,{" "}
   *[no] {""}
}{ $travel ->
    [yes] viaje,{" "}
   *[no] {""}
}otra hora de pesaje? Pésate cada día hasta el { DATETIME($date, dateStyle: "long") }.
QUESTION_WATER_SPARED = ¿Empezó algo estas cuatro semanas: { $creatine ->
    [yes] creatina,{" "}
   *[no] {""}
}{ $salt ->
    [yes] sal,{" "}
   *[no] {""}
}{ $training ->
    [yes] entrenamiento,{" "}
   *[no] {""}
}{ $illness ->
    [yes] enfermedad,{" "}
   *[no] {""}
}{ $travel ->
    [yes] viaje,{" "}
   *[no] {""}
}otra hora de pesaje? Pésate como siempre hasta el { DATETIME($date, dateStyle: "long") }.
QUESTION_CYCLE = ¿Cuándo empezaron tus dos últimas reglas? Sin regla, ¿qué cambió: { $creatine ->
    [yes] creatina,{" "}
   *[no] {""}
}{ $salt ->
    [yes] sal,{" "}
   *[no] {""}
}{ $training ->
    [yes] entrenamiento,{" "}
   *[no] {""}
}pesaje? Pésate diariamente hasta el { DATETIME($date, dateStyle: "long") }.
REVIEW_GOAL_TOO_FAR_SPARED = Esta fase no logra aquello para lo que está: mejor termínala ahora.
QUESTION_CYCLE_SPARED = ¿Cuándo empezaron tus dos últimas reglas? Sin regla, ¿qué cambió: { $creatine ->
    [yes] creatina,{" "}
   *[no] {""}
}{ $salt ->
    [yes] sal,{" "}
   *[no] {""}
}{ $training ->
    [yes] entrenamiento,{" "}
   *[no] {""}
}pesaje? Pésate como siempre hasta el { DATETIME($date, dateStyle: "long") }.
QUESTION_AGAIN = Ya lo preguntamos y aún no lo sabemos. Si no pudiste hacerlo, dilo: entonces miramos contigo tu registro.
QUESTION_IF_MORE = Si tu registro da más que antes, faltaba comida: el plan no cambia, y sigues apuntando así.
QUESTION_IF_AS_LOGGED = Si sale lo mismo y tu peso sigue su rumbo, tu cuerpo necesita otra cantidad: lo que comes cambia un paso.
QUESTION_IF_WATER = Si empezó algo de eso, es agua: no cambia nada más, y se juzga de nuevo el { DATETIME($date, dateStyle: "long") }.
QUESTION_IF_NOT_WATER = Si nada de eso empezó, el agua pronto deja de explicarlo: entonces miramos lo que comes.
QUESTION_FOUND_MORE = Has encontrado comida que faltaba. El plan no cambia, y se juzga por los días desde el { DATETIME($date, dateStyle: "long") }.
QUESTION_FOUND_AS_LOGGED = Tu registro está completo, así que tu cuerpo necesita más o menos de lo que se pensaba.
QUESTION_FOUND_WATER = Lo que cambió el { DATETIME($date, dateStyle: "long") } explica tu peso como agua: nada cambia hasta que se asiente.

# Señales de un control.
CHECK_IN_MISSED_PERIOD = { $eats_less ->
    [yes] Que falte la regla al comer menos es señal de poca energía: acaba esta fase, come tus calorías de mantenimiento y ve al médico.
   *[no] Que falte la regla puede ser señal de poca energía: come al menos lo planeado y ve al médico.
}
CHECK_IN_LATE_PERIOD = Tu regla se retrasa: come { $raised ->
    [yes] { NUMBER($raise_kcal, maximumFractionDigits: 0) } kcal al día más
   *[no] al menos lo planeado
}, y si no llega, habla con un médico.
CHECK_IN_WEAKER = Tu fuerza en los ejercicios principales ha bajado dos veces seguidas: { $eats_less ->
    [yes] acaba esta fase en una semana.
   *[no] come al menos lo planeado y ve al médico si sigue.
}
CHECK_IN_MUCH_WEAKER = Tu fuerza en los ejercicios principales ha bajado una décima parte, dos veces seguidas: { $eats_less ->
    [yes] acaba esta fase.
   *[no] come al menos lo planeado y ve al médico.
}
CHECK_IN_WORN = Hambre y sueño han ido mal dos veces seguidas: come { $raised ->
    [yes] { NUMBER($raise_kcal, maximumFractionDigits: 0) } kcal al día más. Será más llevadero y durará un poco más.
   *[no] al menos lo planeado y ve al médico si sigue.
}
CHECK_IN_LOW_MOOD = Tu ánimo ha estado por los suelos dos veces seguidas: habla con alguien de confianza y, si no mejora, con un médico.

# Una temporada.
SEASON_GAIN = Ganas con un superávit de { NUMBER($surplus_kcal, maximumFractionDigits: 0) } kcal al día; lo que comes se ajusta { every-weeks }.
SEASON_CUT = Con un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa comes { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día menos, hasta el { NUMBER($end_percent, maximumFractionDigits: 1) } % o { weeks }, lo que llegue antes.
SEASON_CUT_FOR_WEEKS = Con un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa comes { NUMBER($deficit_kcal, maximumFractionDigits: 0) } kcal al día menos durante { weeks }, hasta cerca del { NUMBER($end_percent, maximumFractionDigits: 1) } %.
SEASON_BRIDGE = Tras una definición te mantienes, para que vuelva el agua antes de empezar otra cosa.
SEASON_AFTER_CUT = Tu última definición acaba de terminar, así que primero te mantienes.
SEASON_HOLD = Te mantienes: desde un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa este plan no gana más, y { shut } no hay definición.
SEASON_HOLD_UNCUT = Te mantienes: desde un { NUMBER($fat_percent, maximumFractionDigits: 1) } % de grasa esta temporada ya no te hace ganar, y no lleva definición. Para ganar antes, pierde grasa.
SEASON_HELD_AT_NEED = Lo mínimo que debes comer es más o menos tu mantenimiento: te mantienes, sin superávit.
SEASON_LEVEL = Este plan no tiene superávit: comes tus calorías de mantenimiento, y el músculo lo construye el entrenamiento.
SEASON_NO_CUT = Estas semanas no llevan definición: no te hace falta, o no se puede.
SEASON_CUTS = { $cuts ->
    [one] Una definición de { weeks } ocupa
   *[other] { $cuts } definiciones de { weeks } en total ocupan
} el { NUMBER($share_percent, maximumFractionDigits: 0) } % de la temporada.
SEASON_REVIEWED = Los márgenes valen si sigues estas fases y tu registro ajusta lo que comes. Sin eso son mucho más anchos.
SEASON_BESIDE_DECISION = Una temporada sigue su estrategia. Una decisión puede empezar de otra forma: solo mira las próximas 26 semanas, según lo que quieres.
OPTIMUM_BESIDE_DECISION = La mejor temporada solo cuenta tejido magro. Una decisión puede empezar de otra forma: también cuenta semanas de dieta y cuánta grasa quieres tener.
OPTIMUM_LATE_IN_BAND = Llegar a tu intervalo lleva toda esta temporada o más. Avanzas al menos un { NUMBER($percent, maximumFractionDigits: 0) } % de lo que lograrían las definiciones más duras.

# Lo que se dice de un plan: los títulos acaban en _TITLE.
BRIEFING_PHASE_TITLE = { phase-name } desde el { weekday }, { DATETIME($date, dateStyle: "long") }
BRIEFING_WEEK_TITLE = Semana { $week }, desde el { DATETIME($date, dateStyle: "long") }
BRIEFING_END_TITLE = { phase-name }: el final, { DATETIME($date, dateStyle: "long") }
BRIEFING_SIZES_TITLE = Más deprisa o más despacio
BRIEFING_CAUTIONS_TITLE = Ten en cuenta
BRIEFING_LEVERS_TITLE = Si te mueves más
BRIEFING_NO_PLAN_TITLE = Ningún plan seguro
BRIEFING_EAT = Come { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día, con { NUMBER($protein_g, maximumFractionDigits: 0) } gramos de proteína.
BRIEFING_DAYS = { $days ->
    [one] Un día por semana
   *[other] { $days } días por semana
} come { NUMBER($higher_kcal, maximumFractionDigits: 0) } kcal, los demás { NUMBER($lower_kcal, maximumFractionDigits: 0) }.
BRIEFING_EAT_WEEK = Esta semana tiene { NUMBER($week_kcal, maximumFractionDigits: 0) } kcal, unas { NUMBER($intake_kcal, maximumFractionDigits: 0) } al día.
BRIEFING_DAY = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal.
BRIEFING_DAY_TRAINING = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal, con entrenamiento.
BRIEFING_DAY_FLEXIBLE = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal, tu día libre.
BRIEFING_DAY_ALCOHOL = { weekday-name }: { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal, tu día libre, con hasta { NUMBER($alcohol_g, maximumFractionDigits: 0) } gramos de alcohol.
BRIEFING_MEALS = Cada día lleva { NUMBER($protein_g, maximumFractionDigits: 0) } gramos de proteína: unos { NUMBER($meal_g, maximumFractionDigits: 0) } gramos por comida.
BRIEFING_SCALE = El { weekday } la báscula debería mostrar unos { NUMBER($weight_kg, maximumFractionDigits: 1) } kg, entre { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } y { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }.
BRIEFING_SCALE_WATER = El { weekday } la báscula debería mostrar unos { NUMBER($weight_kg, maximumFractionDigits: 1) } kg, entre { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } y { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }; { NUMBER($water_kg, maximumFractionDigits: 1) } kg de la bajada son agua.
BRIEFING_JUDGE_FROM = No juzgues por la báscula antes del día { $day }.
BRIEFING_FAT = En { weeks } cuenta con perder unos { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa, entre { NUMBER($fat_lower_kg, maximumFractionDigits: 1) } y { NUMBER($fat_upper_kg, maximumFractionDigits: 1) }.
BRIEFING_FAT_UP_TO = En { weeks } cuenta con perder unos { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa. Pueden ser hasta { NUMBER($fat_upper_kg, maximumFractionDigits: 1) } kg, o nada.
BRIEFING_FAT_AND_WATER = Para entonces se habrán ido unos { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa; otros { NUMBER($water_kg, maximumFractionDigits: 1) } kg son agua, que volverá.
BRIEFING_FAT_GONE = Para entonces se habrán ido unos { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa.
BRIEFING_MOSTLY_WATER = Para entonces casi todo lo perdido será agua, que volverá.
BRIEFING_GAINED = Para entonces habrás ganado unos { NUMBER($lean_kg, maximumFractionDigits: 1) } kg de tejido magro y { NUMBER($fat_kg, maximumFractionDigits: 1) } kg de grasa.
BRIEFING_STEADY = Tu cuerpo sigue más o menos igual; las subidas y bajadas son agua.
BRIEFING_CHECKS = Mira la tendencia de tu peso el { DATETIME($first_date, dateStyle: "long") } y el { DATETIME($second_date, dateStyle: "long") }.
BRIEFING_END_SCALE = La báscula debería mostrar unos { NUMBER($weight_kg, maximumFractionDigits: 1) } kg, entre { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } y { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }.
BRIEFING_END_SCALE_WATER = La báscula debería mostrar unos { NUMBER($weight_kg, maximumFractionDigits: 1) } kg, entre { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } y { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }; { NUMBER($water_kg, maximumFractionDigits: 1) } kg de lo perdido volverán como agua.

## coach

REFUSED_CLEARANCE_WITHOUT_WORDS = El visto bueno necesita palabras: el nombre de quien lo dio y por qué un déficit es aceptable.
WARNED_CLEARED = Se planea un déficit con el visto bueno de { $given_by }. Razón dada: { $reason }
MEASUREMENTS_DISAGREE = La grasa por { first-method } y por { second-method } difiere { NUMBER($difference_points, maximumFractionDigits: 1) } puntos; sus errores explican unos { NUMBER($expected_points, maximumFractionDigits: 1) }. Se ha ensanchado el intervalo; repetir ambas muestra de cuál fiarse.
REPEATS_SCATTER = Las repeticiones por { repeated-method } se dispersan { NUMBER($observed_points, maximumFractionDigits: 1) } puntos de grasa; lo habitual son unos { NUMBER($expected_points, maximumFractionDigits: 1) }. Se ha ensanchado el intervalo.
METHOD_OUTSIDE_AGE_RANGE = La ecuación { $method } se publicó para edades de { NUMBER($from_years, maximumFractionDigits: 0) } a { NUMBER($to_years, maximumFractionDigits: 0) } años; a los { NUMBER($age_years, maximumFractionDigits: 0) } se ha tomado su error { NUMBER($factor, maximumFractionDigits: 2) } veces mayor.
METHOD_UNDER_AGE_RANGE = La ecuación { $method } se publicó desde los { NUMBER($from_years, maximumFractionDigits: 0) } años; a los { NUMBER($age_years, maximumFractionDigits: 0) } se ha tomado su error { NUMBER($factor, maximumFractionDigits: 2) } veces mayor.
METHOD_OUTSIDE_BMI_RANGE = La grasa por IMC se publicó hasta un IMC de { NUMBER($to_kg_m2, maximumFractionDigits: 1) }; con { NUMBER($bmi_kg_m2, maximumFractionDigits: 1) } se ha tomado su error { NUMBER($factor, maximumFractionDigits: 2) } veces mayor.
MEASUREMENT_ADDS_NOTHING = Esto no añade nada a las otras medidas: comparte su error con una más exacta.
HEALTHY_RANGE_CONTINUED = El margen sano se publicó para edades de { NUMBER($from_years, maximumFractionDigits: 0) } a { NUMBER($to_years, maximumFractionDigits: 0) } años; se usa el tramo más cercano.
EQUATION_NEEDS_BODY_FAT = Necesita una grasa medida; aquí se muestra con una estimada.
EQUATION_OTHER_AGE = Hecha para edades de { NUMBER($from_years, maximumFractionDigits: 0) } a { NUMBER($to_years, maximumFractionDigits: 0) } años.
EQUATION_FOR_TRAINED = Hecha para personas que entrenan.
EQUATION_FOR_EXPERIENCED = Hecha para deportistas musculosos, tras el primer año de entrenamiento.
EQUATION_FOR_UNTRAINED = Hecha para personas que no entrenan.
EQUATION_SAME_AS = Los mismos números que { $equation }, contados una vez.
RESTING_PREFERS_FAT_FREE_MASS_TRAINED = Se prefieren ecuaciones basadas en la masa libre de grasa hechas para personas entrenadas, porque la grasa está medida.
RESTING_PREFERS_ATHLETE_WEIGHT = Se prefiere una ecuación basada en la masa corporal, hecha para deportistas: la grasa no está medida, y las ecuaciones generales se quedan cortas para personas entrenadas.
RESTING_PREFERS_FAT_FREE_MASS = Se prefieren ecuaciones basadas en la masa libre de grasa hechas para adultos en general, porque la grasa está medida.
RESTING_PREFERS_GENERAL = Se prefieren ecuaciones basadas en peso, estatura y edad hechas para adultos en general: la grasa no está medida.
RESTING_AGE_EXTRAPOLATED = Ninguna ecuación preferida se hizo para esta edad (la más cercana estudiada: { NUMBER($nearest_years, maximumFractionDigits: 0) } años); por eso el intervalo es más ancho.
RESTING_BOTH_SEXES = Se han promediado las ecuaciones de ambos sexos, y su diferencia ensancha el intervalo.
RESTING_FALLS_WITH_AGE = Desde los { NUMBER($from_years, maximumFractionDigits: 0) } años el gasto en reposo baja: a las ecuaciones que no cuentan la edad se les ha restado el { NUMBER($fall_percent, maximumFractionDigits: 1) } %.
EER_FOR_ADULTS = Estas necesidades valen desde los { NUMBER($from_years, maximumFractionDigits: 0) } años.
EER_BEYOND_CLASS = La actividad queda fuera de esta clase: su valor cuenta { NUMBER($factor, maximumFractionDigits: 3) } veces.
LOG_SORTED = Los datos estaban desordenados y se han ordenado por día.
SEASON_PHYSIOLOGY = Lo magro ganado es tejido magro, sin glucógeno ni agua. Una parte viene del entrenamiento en cualquier fase, otra del superávit, cuya parte magra baja cuanto mayor es.
BRIEFING_MACROS = { NUMBER($intake_kcal, maximumFractionDigits: 0) } kcal al día: proteína { NUMBER($protein_g, maximumFractionDigits: 0) } g, hidratos { NUMBER($carbohydrate_g, maximumFractionDigits: 0) } g, grasa { NUMBER($fat_g, maximumFractionDigits: 0) } g.
BRIEFING_BALANCE = Balance de energía { NUMBER($first_kcal, maximumFractionDigits: 0) } kcal al día la primera semana, { NUMBER($last_kcal, maximumFractionDigits: 0) } la última.
BRIEFING_SO_FAR = Desde el inicio: grasa { NUMBER($fat_kg, maximumFractionDigits: 1) } kg, tejido magro { NUMBER($lean_kg, maximumFractionDigits: 1) } kg, agua y contenido intestinal { NUMBER($carried_kg, maximumFractionDigits: 1) } kg. Balance de energía { NUMBER($balance_kcal, maximumFractionDigits: 0) } kcal al día.
BRIEFING_CHANGE = Cambio: peso { NUMBER($weight_kg, maximumFractionDigits: 1) } kg (de { NUMBER($weight_lower_kg, maximumFractionDigits: 1) } a { NUMBER($weight_upper_kg, maximumFractionDigits: 1) }), grasa { NUMBER($fat_kg, maximumFractionDigits: 1) } (de { NUMBER($fat_lower_kg, maximumFractionDigits: 1) } a { NUMBER($fat_upper_kg, maximumFractionDigits: 1) }), tejido magro { NUMBER($lean_kg, maximumFractionDigits: 1) } (de { NUMBER($lean_lower_kg, maximumFractionDigits: 1) } a { NUMBER($lean_upper_kg, maximumFractionDigits: 1) }), agua y contenido intestinal { NUMBER($carried_kg, maximumFractionDigits: 1) } (de { NUMBER($carried_lower_kg, maximumFractionDigits: 1) } a { NUMBER($carried_upper_kg, maximumFractionDigits: 1) }).
BODY_FAT_METHODS_DISAGREE = Dos mediciones de grasa no concuerdan: { NUMBER($first_percent, maximumFractionDigits: 0) } % por { first-method } el { DATETIME($first_date, dateStyle: "long") }, { NUMBER($second_percent, maximumFractionDigits: 0) } % por { second-method } el { DATETIME($second_date, dateStyle: "long") }. Ambas cuentan según su error; repite la más exacta antes de que decida algo.
LOG_COUNTED_BEFORE = { $count ->
    [one] Un dato anterior al { DATETIME($date, dateStyle: "long") } ya cuenta
   *[other] { $count } datos anteriores al { DATETIME($date, dateStyle: "long") } ya cuentan
} en el estado, y no otra vez.

# A quién mirar primero, y qué hacer.
ATTENTION_SAFETY = Una señal o un límite de seguridad acaba esta fase o pide un profesional.
ATTENTION_CONTRADICTED = Báscula y registro no concuerdan.
ATTENTION_OFF_PLAN = La fase va { pace } de lo planeado.
ATTENTION_RAISED = Un límite de seguridad o un control ha subido la cantidad.
ATTENTION_LOWERED = La revisión baja la cantidad, aunque la fase no se aparta del plan.
ATTENTION_ENDING = La fase acaba, o su final se mueve.
ATTENTION_WAITING = Ocurre algo que mueve el peso; el juicio espera.
ATTENTION_NOT_WEIGHED = Sin ningún peso desde hace { days }: nadie sabe cómo va la fase.
ATTENTION_UNDER_RAIL = Se apunta menos de lo que permite un límite de seguridad.
ATTENTION_SILENT = Sin datos apuntados desde hace { days }.
ATTENTION_NONE = Todo va según el plan, o es pronto para decirlo.
ATTENTION_DO_SAFETY = Lee hoy la revisión con la persona, y procura que vea a quien nombra.
ATTENTION_DO_SETTLE = Pregunta lo que pregunta la revisión: dice qué lo aclara, y hasta cuándo.
ATTENTION_DO_SETTLE_AND_CHANGE = Acuerda { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal al día { $direction ->
    [less] menos
   *[more] más
}; luego pregunta lo que pregunta la revisión, o en qué quedó su última cuestión.
ATTENTION_DO_CHASE = Pregunta en qué quedó la última cuestión: aún no hay respuesta.
ATTENTION_DO_CHANGE = Acuerda { NUMBER($step_kcal, maximumFractionDigits: 0) } kcal al día { $direction ->
    [less] menos
   *[more] más
}.
ATTENTION_DO_LOOK = Mira el registro con la persona; no cambies nada todavía.
ATTENTION_DO_NEXT = Decide con la persona qué viene después.
ATTENTION_DO_TELL_END = Di el nuevo último día.
ATTENTION_DO_ASK = Pregunta a la persona cómo está, y pide un peso.
ATTENTION_DO_NOTHING = No hay nada que hacer.

## developer

MEASURE_NOT_USED = La ecuación no usa { $fields }.
