/*
 * <steelyard-plan>: a member's plan as a card, from the JSON answer of POST /v1/plans.
 *
 * It is given the answer and calls nobody: no key, no request, nothing stored. Texts of the answer become text nodes
 * and never markup. The numbers are shown together with the answer's cautions, or not at all.
 */
(() => {
  "use strict";

  const GENERAL_CAUTION = "NOT_MEDICAL_ADVICE"; // of every plan that the service makes
  const SAID_BY_HEADING = "INFEASIBLE"; // a reason that the heading says already, for people
  const OF_EQUATIONS = "RESTING_PREFERS_"; // reasons that a plan which there is not has no use for
  // Cautions of those to whom no figure of body fat is shown: minors, in pregnancy, with an eating disorder.
  const SPARED_BY = ["SEE_FOR_MINORS", "SEE_MIDWIFE", "SEE_EATING_DISORDER_SERVICE"];
  const DAY = 86_400_000;
  const SAID_BY_THE_CAP = ["WARNED_FAT_SUPPLY", "WARNED_HISTORY_UNKNOWN"];
  const TO_DO = ["TRAIN_IN_DEFICIT", "TRAIN_IN_GAIN", "WEIGH_DAILY", "WEIGH_DAILY_SPARED"]; // guidance for every week, beside what to eat
  const MESSAGE_LANGUAGE = "en"; // of the answer's own texts, where the page has not translated them

  const LABELS = {
    en: {
      plan: "Your plan",
      span: (from, to) => `${from} to ${to}`,
      thisWeek: "This week",
      firstWeek: (date) => `First week, from ${date}`,
      lastWeek: (date) => `Last week, until ${date}`,
      aDay: "kcal a day",
      aDayOnAverage: "kcal a day on average",
      protein: "Protein",
      carbohydrate: "Carbohydrate",
      fat: "Fat",
      fibre: "of which fibre",
      higher_carbohydrate: "Higher-carbohydrate days",
      lower_carbohydrate: "Lower-carbohydrate days",
      daysAWeek: (count) => `${count} a week`,
      today: "kcal today",
      wholeWeek: (kcal) => `${kcal} kcal in the whole week`,
      meals: (grams) => `Protein by meal: ${grams} g`,
      training: (minutes) => `training, ${minutes} min`,
      party: "party",
      eating_out: "eating out",
      higher_day: "higher day",
      other: "flexible day",
      alcohol: (grams) => `up to ${grams} g of alcohol`,
      onTheScale: (date, kilograms, range) => `On the scale on ${date}: about ${kilograms} kg (${range}).`,
      cautions: "Please note",
      forecast: "What to expect",
      weight: "Weight on the scale",
      interval: (share) => `where it ends up in ${share} of cases`,
      tissue: "Without that water and food",
      carried: "Water and food, which come and go",
      picture: (first, from, last, to, low, high) =>
        `Weight on the scale goes from ${first} kg on ${from} to ${last} kg on ${to}, then between ${low} and ${high} kg.`,
      phases: "Phases",
      now: "now",
      weeks: (count) => (count === 1 ? "1 week" : `${count} weeks`),
      endsEarly: "Ends early",
      ofFat: "Fat",
      ofLean: "Lean tissue",
      ofCarried: "Water and food",
      ofWeight: "Weight",
      range: (low, high) => `${low} to ${high}`,
      rails: "Kept safe",
      reasons: "Why these numbers",
      infeasible: "No safe plan does what was asked",
      nearest: "What would be possible",
      nearestFat: (value) => `${value} kg of fat in the time asked`,
      nearestWeeks: (value, kind) => `${kind}: ${value} weeks`,
      nearestDeficit: (value) => `a deficit of ${value} kcal a day at most`,
      refused: "No plan was made",
      unavailable: "The plan is not available at the moment.",
      unreadable: "This plan cannot be shown: its data is not complete.",
      uncautioned: "This plan is not shown, because its cautions are missing.",
      advice: "This is information, not medical advice. Speak to a physician or registered dietitian before changing your diet.",
      mini_cut: "Mini-cut",
      cut: "Cut",
      gain: "Gain",
      maintenance: "Maintenance",
      capped: "Limited",
      warned: "Warning",
    },
    de: {
      plan: "Dein Plan",
      span: (from, to) => `${from} bis ${to}`,
      thisWeek: "Diese Woche",
      firstWeek: (date) => `Erste Woche, ab ${date}`,
      lastWeek: (date) => `Letzte Woche, bis ${date}`,
      aDay: "kcal am Tag",
      aDayOnAverage: "kcal am Tag im Mittel",
      protein: "Eiweiß",
      carbohydrate: "Kohlenhydrate",
      fat: "Fett",
      fibre: "davon Ballaststoffe",
      higher_carbohydrate: "Tage mit mehr Kohlenhydraten",
      lower_carbohydrate: "Tage mit weniger Kohlenhydraten",
      daysAWeek: (count) => `${count} in der Woche`,
      today: "kcal heute",
      wholeWeek: (kcal) => `${kcal} kcal in der ganzen Woche`,
      meals: (grams) => `Eiweiß je Mahlzeit: ${grams} g`,
      training: (minutes) => `Training, ${minutes} min`,
      party: "Feier",
      eating_out: "auswärts essen",
      higher_day: "Tag mit mehr",
      other: "freier Tag",
      alcohol: (grams) => `bis zu ${grams} g Alkohol`,
      onTheScale: (date, kilograms, range) => `Auf der Waage am ${date}: etwa ${kilograms} kg (${range}).`,
      cautions: "Bitte beachten",
      forecast: "Was zu erwarten ist",
      weight: "Gewicht auf der Waage",
      interval: (share) => `wo es in ${share} der Fälle liegt`,
      tissue: "Ohne dieses Wasser und Essen",
      carried: "Wasser und Essen, die kommen und gehen",
      picture: (first, from, last, to, low, high) =>
        `Das Gewicht auf der Waage geht von ${first} kg am ${from} auf ${last} kg am ${to}, dann zwischen ${low} und ${high} kg.`,
      phases: "Phasen",
      now: "jetzt",
      weeks: (count) => (count === 1 ? "1 Woche" : `${count} Wochen`),
      endsEarly: "Endet früher",
      ofFat: "Fett",
      ofLean: "Magergewebe",
      ofCarried: "Wasser und Essen",
      ofWeight: "Gewicht",
      range: (low, high) => `${low} bis ${high}`,
      rails: "Zu deiner Sicherheit",
      reasons: "Warum diese Zahlen",
      infeasible: "Kein sicherer Plan leistet, was gewünscht war",
      nearest: "Was möglich wäre",
      nearestFat: (value) => `${value} kg Fett in der gewünschten Zeit`,
      nearestWeeks: (value, kind) => `${kind}: ${value} Wochen`,
      nearestDeficit: (value) => `höchstens ${value} kcal Defizit am Tag`,
      refused: "Es wurde kein Plan gemacht",
      unavailable: "Der Plan ist zurzeit nicht verfügbar.",
      unreadable: "Dieser Plan kann nicht gezeigt werden: Seine Daten sind unvollständig.",
      uncautioned: "Dieser Plan wird nicht gezeigt, weil seine Hinweise fehlen.",
      advice:
        "Dies ist eine Information und kein ärztlicher Rat. Sprich mit einer Ärztin, einem Arzt oder einer Ernährungsfachkraft, bevor du deine Ernährung umstellst.",
      mini_cut: "Mini-Cut",
      cut: "Diätphase",
      gain: "Aufbau",
      maintenance: "Erhaltung",
      capped: "Begrenzt",
      warned: "Warnung",
    },
    es: {
      plan: "Tu plan",
      span: (from, to) => `del ${from} al ${to}`,
      thisWeek: "Esta semana",
      firstWeek: (date) => `Primera semana, desde el ${date}`,
      lastWeek: (date) => `Última semana, hasta el ${date}`,
      aDay: "kcal al día",
      aDayOnAverage: "kcal al día de media",
      protein: "Proteína",
      carbohydrate: "Hidratos",
      fat: "Grasa",
      fibre: "de ellos, fibra",
      higher_carbohydrate: "Días con más hidratos",
      lower_carbohydrate: "Días con menos hidratos",
      daysAWeek: (count) => `${count} por semana`,
      today: "kcal hoy",
      wholeWeek: (kcal) => `${kcal} kcal en toda la semana`,
      meals: (grams) => `Proteína por comida: ${grams} g`,
      training: (minutes) => `entrenamiento, ${minutes} min`,
      party: "fiesta",
      eating_out: "comida fuera",
      higher_day: "día con más",
      other: "día libre",
      alcohol: (grams) => `hasta ${grams} g de alcohol`,
      onTheScale: (date, kilograms, range) => `En la báscula el ${date}: unos ${kilograms} kg (${range}).`,
      cautions: "Ten en cuenta",
      forecast: "Qué esperar",
      weight: "Peso en la báscula",
      interval: (share) => `donde acaba en el ${share} de los casos`,
      tissue: "Sin esa agua y esa comida",
      carried: "Agua y comida, que van y vienen",
      picture: (first, from, last, to, low, high) =>
        `El peso en la báscula va de ${first} kg el ${from} a ${last} kg el ${to}, y entonces está entre ${low} y ${high} kg.`,
      phases: "Fases",
      now: "ahora",
      weeks: (count) => (count === 1 ? "1 semana" : `${count} semanas`),
      endsEarly: "Acaba antes",
      ofFat: "Grasa",
      ofLean: "Tejido magro",
      ofCarried: "Agua y comida",
      ofWeight: "Peso",
      range: (low, high) => `${low} a ${high}`,
      rails: "Por tu seguridad",
      reasons: "Por qué estos números",
      infeasible: "Ningún plan seguro logra lo pedido",
      nearest: "Lo que sería posible",
      nearestFat: (value) => `${value} kg de grasa en el tiempo pedido`,
      nearestWeeks: (value, kind) => `${kind}: ${value} semanas`,
      nearestDeficit: (value) => `un déficit de ${value} kcal al día como mucho`,
      refused: "No se ha hecho ningún plan",
      unavailable: "El plan no está disponible en este momento.",
      unreadable: "Este plan no se puede mostrar: sus datos están incompletos.",
      uncautioned: "Este plan no se muestra, porque faltan sus advertencias.",
      advice: "Esto es información, no consejo médico. Habla con un médico o dietista titulado antes de cambiar tu dieta.",
      mini_cut: "Mini-cut",
      cut: "Definición",
      gain: "Volumen",
      maintenance: "Mantenimiento",
      capped: "Limitado",
      warned: "Aviso",
    },
  };

  // The page around the card sets its accent colour and whether it is light or dark; what could hide the cautions
  // beside the numbers is fixed here, where an important rule of the component is stronger than any of the page.
  const STYLE = `
    :host { all: initial; display: block !important; height: auto !important; max-height: none !important;
      overflow: visible !important; opacity: 1 !important; clip-path: none !important; container-type: inline-size; }
    :host([hidden]) { display: none !important; }
    :host { color-scheme: light dark; }
    :host([theme="light"]) { color-scheme: light; }
    :host([theme="dark"]) { color-scheme: dark; }
    * { box-sizing: border-box; }
    .card { visibility: visible; --ink: light-dark(#1c2326, #e8ebe8); --faint: light-dark(#525d61, #a9b4b5);
      --sheet: light-dark(#ffffff, #1c2123); --line: light-dark(#cfd4d3, #3d474a);
      --accent: var(--steelyard-accent, light-dark(#1b5e7d, #86c5e3)); --tissue: light-dark(#7a4b00, #f0bb63);
      --warn: light-dark(#8a2f0b, #ffb58a); --warn-sheet: light-dark(#fbeae0, #3a2419);
      font: 16px/1.5 system-ui, sans-serif; color: var(--ink); background: var(--sheet); text-align: start;
      border: 1px solid var(--line); border-radius: 8px; padding: 20px; overflow-wrap: anywhere; }
    h2, h3, p, ul, ol, dl, dd, figure { margin: 0; padding: 0; }
    h2 { font-size: 20px; line-height: 1.3; }
    h3 { font-size: 16px; margin-bottom: 6px; }
    .faint { color: var(--faint); font-size: 14px; }
    .parts { display: grid; gap: 20px; margin-top: 16px; }
    .intake { font-size: 34px; font-weight: 700; line-height: 1.15; font-variant-numeric: tabular-nums; }
    .intake small { display: inline-block; font-size: 16px; font-weight: 400; line-height: 1.5; }
    .macros { display: flex; flex-wrap: wrap; gap: 6px 14px; margin-top: 8px; }
    .macros dt, .change dt { color: var(--faint); font-size: 14px; }
    .macros dd, .change dd { font-weight: 600; font-variant-numeric: tabular-nums; }
    .day-kinds { display: flex; flex-wrap: wrap; gap: 12px 28px; margin-top: 14px; }
    .day-kind { border-inline-start: 4px solid var(--line); padding-inline-start: 12px; }
    .day-kind .intake { font-size: 22px; }
    .day-kind .macros { margin-top: 2px; }
    .days { list-style: none; margin-top: 8px; max-width: 26em; }
    .days li { display: grid; grid-template-columns: 3em 5.5em minmax(0, 1fr); padding: 1px 8px; align-items: baseline; }
    .days li[aria-current] { border-inline-start: 4px solid var(--accent); padding-inline-start: 4px; font-weight: 700; }
    .kcal { font-variant-numeric: tabular-nums; }
    .scale { margin-top: 10px; font-weight: 600; }
    .cautions { background: var(--warn-sheet); border-inline-start: 4px solid var(--warn); padding: 12px 14px; }
    .cautions li + li, .list li + li { margin-top: 6px; }
    .cautions ul, .list { padding-inline-start: 18px; }
    svg { display: block; max-width: 100%; font: 12px system-ui, sans-serif; }
    svg text { fill: var(--faint); }
    .axis, .edge { stroke: var(--line); }
    .shade { fill: var(--ink); opacity: .05; }
    .band { fill: var(--accent); opacity: .2; }
    .carried { fill: var(--tissue); opacity: .28; }
    .weight { fill: none; stroke: var(--accent); stroke-width: 2.5; }
    .tissue { fill: none; stroke: var(--tissue); stroke-width: 2; stroke-dasharray: 6 4; }
    .today { stroke: var(--ink); stroke-dasharray: 1 3; }
    .legend { display: grid; gap: 2px; list-style: none; margin-top: 6px; font-size: 14px; }
    .legend li { display: flex; gap: 8px; align-items: center; }
    .legend svg { flex: none; }
    .phases { list-style: none; display: grid; gap: 12px; }
    .phases > li { border-inline-start: 4px solid var(--line); padding-inline-start: 12px; }
    .phases > li[aria-current] { border-color: var(--accent); }
    .phase-name { font-weight: 700; }
    .stop { margin-top: 6px; font-weight: 600; }
    .change { display: grid; gap: 2px; margin-top: 4px; }
    .change div { display: grid; grid-template-columns: 7.5em minmax(0, 1fr); align-items: baseline; }
    .change dd { font-weight: 400; }
    .change .faint { white-space: nowrap; }
    summary { cursor: pointer; font-weight: 700; }
    summary:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
    .list { margin-top: 6px; }
    [role="alert"] { margin-top: 8px; }
    .foot { margin-top: 16px; border-top: 1px solid var(--line); padding-top: 8px; }
    @container (min-width: 46em) {
      .parts { grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); }
      .parts > * { grid-column: 1 / -1; }
      .parts > .week { grid-column: 1; }
      .week + .cautions { grid-column: 2; align-self: start; }
      .phases { grid-template-columns: repeat(auto-fit, minmax(15.5em, 1fr)); }
    }
  `;

  class SteelyardPlan extends HTMLElement {
    static observedAttributes = ["lang", "messages", "date"];
    #root = this.attachShadow({ mode: "open" });
    #answer = null;
    #wasGiven = false;
    #drawnWidth = 0;
    #children = new MutationObserver(() => this.#readChild());
    #size = new ResizeObserver(() => this.#fitPicture());

    constructor() {
      super();
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(STYLE);
      this.#root.adoptedStyleSheets = [sheet];
    }

    /** The answer of POST /v1/plans, or its problem document. A copy is kept: later changes of it do nothing. */
    get plan() {
      return this.#answer === null ? null : structuredClone(this.#answer);
    }

    set plan(answer) {
      this.#wasGiven = true;
      this.#take(answer ?? null);
    }

    connectedCallback() {
      // Set before the component was defined, the property stands in the way of the one above.
      if (Object.hasOwn(this, "plan")) {
        const answer = this.plan;
        delete this.plan;
        this.plan = answer;
      }
      this.#children.observe(this, { childList: true, subtree: true, characterData: true });
      this.#size.observe(this);
      this.#readChild();
      this.#render();
    }

    disconnectedCallback() {
      this.#children.disconnect();
      this.#size.disconnect();
    }

    attributeChangedCallback() {
      if (this.isConnected) this.#render();
    }

    #readChild() {
      if (this.#wasGiven) return;
      const script = this.querySelector(':scope > script[type="application/json"]');
      if (!script?.textContent.trim()) return;
      try {
        this.#take(JSON.parse(script.textContent));
      } catch {
        // Half of it, while the page still loads, or nothing that can be shown.
        this.#take(document.readyState === "loading" ? null : {});
      }
    }

    #take(answer) {
      this.#answer = answer === null ? null : structuredClone(answer);
      if (this.isConnected) this.#render();
    }

    #render() {
      const words = wordsFor(this.closest("[lang]")?.lang, this.getAttribute("messages") ?? MESSAGE_LANGUAGE);
      this.#drawnWidth = 0;
      this.#root.replaceChildren();
      if (this.#answer === null) return;
      const today = dayOf(this.getAttribute("date")) ?? localToday();
      try {
        this.#root.append(cardOf(this.#answer, words, today));
        this.#fitPicture();
      } catch {
        this.#root.replaceChildren(notice(words, words.unreadable)); // what the contract promises is missing
      }
      this.#root.firstChild.lang = words.language;
    }

    // The picture is drawn for the width there is, so that its letters keep their size.
    #fitPicture() {
      const figure = this.#root.querySelector(".picture");
      if (!figure) return;
      const width = Math.round(Math.min(Math.max(figure.clientWidth, 220), 900));
      if (width === this.#drawnWidth) return;
      this.#drawnWidth = width;
      figure.replaceChildren(figure.draw(width));
    }
  }

  // What is shown

  function cardOf(answer, words, today) {
    if (isProblem(answer)) return problemCard(answer, words);
    if (!Array.isArray(answer.phases) || typeof answer.feasible !== "boolean") return notice(words, words.unreadable);
    if (!hasCautions(answer)) return notice(words, words.uncautioned);
    return answer.feasible ? planCard(answer, words, today) : infeasibleCard(answer, words);
  }

  const isProblem = (answer) => typeof answer.status === "number" && typeof answer.title === "string";

  function hasCautions(answer) {
    const cautions = answer.cautions;
    return Array.isArray(cautions) && cautions.length > 0 && cautions.every((each) => isText(each?.text)) &&
      cautions.some((each) => each.code === GENERAL_CAUTION);
  }

  const isText = (text) => typeof text === "string" && text.trim() !== "";

  function planCard(plan, words, today) {
    const weeks = plan.phases.flatMap((phase) => phase.weeks.map((week) => ({ phase, week, ...span(week) })));
    const current = weeks.find(({ from, to }) => from <= today && today <= to);
    const shown = current ?? (today < weeks[0].from ? weeks[0] : weeks.at(-1));
    const [first, last] = [weeks[0].from, weeks.at(-1).to];
    return element(
      "article", { class: "card" },
      element("h2", {}, words.plan),
      element("p", { class: "faint" }, words.span(words.date(first), words.date(last))),
      element(
        "div", { class: "parts" },
        weekPart(shown, current, words, today),
        cautionsPart(plan, words),
        forecastPart(plan, weeks, words, today),
        phasesPart(plan, current?.phase, words),
        railsPart(plan, words),
        reasonsPart(plan, shown.phase, words),
      ),
      element("p", { class: "faint foot" }, `Steelyard ${plan.model_version}`),
    );
  }

  function weekPart({ phase, week, from, to }, current, words, today) {
    const when = current ? words.thisWeek : today < from ? words.firstWeek(words.date(from)) : words.lastWeek(words.date(to));
    const days = week.by_day ?? [];
    const now = days.find((day) => dayOf(day.date) === today);
    const kinds = differing(week.day_kinds);
    return element(
      "section", { class: "week" },
      element("h3", {}, when),
      element("p", { class: "faint" }, `${words.kind(phase.kind)} · ${words.span(words.date(from), words.date(to))}`),
      now
        ? intakeOf({ ...now, fibre_g: undefined }, words.today, words)
        : intakeOf(week, kinds.length || days.length ? words.aDayOnAverage : words.aDay, words),
      kinds.length
        ? element("div", { class: "day-kinds" },
            ...kinds.map((kind) =>
              element("div", { class: "day-kind" },
                element("p", {}, element("strong", {}, words.kind(kind.kind)), ` · ${words.daysAWeek(words.number(kind.days_per_week))}`),
                intakeOf(kind, words.aDay, words))))
        : null,
      days.length ? daysPart(days, now, words) : null,
      element("p", { class: "scale" }, scaleAt(week.at_end, words)),
      toDo(phase, words),
    );
  }

  // Kinds of day that have the same to eat are no kinds.
  function differing(kinds) {
    const eaten = kinds.map((kind) => [kind.intake_kcal, kind.protein_g, kind.carbohydrate_g, kind.fat_g].join());
    return new Set(eaten).size > 1 ? kinds : [];
  }

  function daysPart(days, now, words) {
    const total = days.reduce((sum, day) => sum + day.intake_kcal, 0);
    return element(
      "div", {},
      element("p", { class: "faint" }, words.meals((now ?? days[0]).meals_protein_g.map((grams) => words.number(grams)).join(" + "))),
      element("ol", { class: "days" }, ...days.map((day) => dayItem(day, day === now, words))),
      element("p", { class: "faint" }, words.wholeWeek(words.number(total))),
    );
  }

  function dayItem(day, isToday, words) {
    const what = [
      day.training_minutes > 0 ? words.training(words.number(day.training_minutes)) : "",
      day.flexible === null ? "" : words.kind(day.flexible),
      day.alcohol_g > 0 ? words.alcohol(words.number(day.alcohol_g)) : "",
    ].filter((each) => each);
    return element(
      "li", { "aria-current": isToday ? "date" : null },
      element("span", {}, words.weekday(dayOf(day.date))),
      element("span", { class: "kcal" }, `${words.number(day.intake_kcal)} kcal`),
      element("span", { class: "faint" }, what.join(", ")),
    );
  }

  function scaleAt({ date, weight_kg: weight }, words) {
    const range = words.range(words.number(weight.lower, 1), words.number(weight.upper, 1));
    return words.onTheScale(words.date(dayOf(date)), words.number(weight.mean, 1), range);
  }

  function toDo(phase, words) {
    const said = (phase.guidance ?? []).filter((each) => TO_DO.includes(each.code));
    if (!said.length) return null;
    return element("ul", { class: "list", lang: words.messages }, ...said.map((each) => element("li", {}, each.text)));
  }

  function intakeOf(eaten, unit, words) {
    const macros = [
      [words.protein, eaten.protein_g],
      [words.carbohydrate, eaten.carbohydrate_g],
      [words.fibre, eaten.fibre_g],
      [words.fat, eaten.fat_g],
    ].filter(([, grams]) => grams !== undefined);
    return element(
      "div", {},
      element("p", { class: "intake" }, words.number(eaten.intake_kcal), " ", element("small", {}, unit)),
      element("dl", { class: "macros" },
        ...macros.map(([name, grams]) =>
          element("div", {}, element("dt", {}, name), element("dd", {}, `${words.number(grams)} g`)))),
    );
  }

  function cautionsPart(plan, words) {
    const said = [plan.cautions, ...plan.phases.map((phase) => phase.cautions)].flat().map((each) => each.text);
    return element(
      "section", { class: "cautions" },
      element("h3", {}, words.cautions),
      element("ul", { lang: words.messages }, ...[...new Set(said)].map((text) => element("li", {}, text))),
    );
  }

  function forecastPart(plan, weeks, words, today) {
    const picture = element("div", { class: "picture" });
    picture.draw = (width) => drawForecast(weeks, plan.start_weight_kg, words, today, width);
    const coverage = words.percent(weeks[0].week.at_end.weight_kg.coverage);
    return element(
      "section", {},
      element("h3", {}, words.forecast),
      element(
        "figure", {},
        picture,
        element("ul", { class: "legend" },
          key("weight", words.weight), key("band", words.interval(coverage)), key("tissue", words.tissue),
          key("carried", words.carried)),
      ),
    );
  }

  function key(kind, text) {
    const isArea = kind === "band" || kind === "carried";
    const mark = isArea
      ? svg("rect", { class: kind, x: 0, y: 1, width: 26, height: 10 })
      : svg("path", { class: kind, d: "M0 6H26" });
    return element("li", {}, svg("svg", { width: 26, height: 12, "aria-hidden": "true" }, mark), element("span", {}, text));
  }

  const isSpared = (plan) => plan.cautions.some((each) => SPARED_BY.includes(each.code));

  function phasesPart(plan, current, words) {
    const spares = isSpared(plan);
    return element(
      "section", {},
      element("h3", {}, words.phases),
      element("ol", { class: "phases" }, ...plan.phases.map((phase) => phaseItem(phase, phase === current, spares, words))),
    );
  }

  function phaseItem(phase, isCurrent, spares, words) {
    const dates = words.span(words.date(dayOf(phase.start_date)), words.date(dayOf(phase.end_date)));
    const changes = [
      [words.ofWeight, phase.change.weight_kg],
      ...(spares ? [] : [[words.ofFat, phase.change.fat_kg], [words.ofLean, phase.change.lean_kg]]),
      [words.ofCarried, phase.change.carried_kg],
    ];
    return element(
      "li", { "aria-current": isCurrent ? "step" : null },
      element("p", {}, element("span", { class: "phase-name" }, words.kind(phase.kind)), isCurrent ? ` · ${words.now}` : ""),
      element("p", { class: "faint" }, `${dates} · ${words.weeks(phase.weeks.length)}`),
      element("dl", { class: "change" },
        ...changes.map(([name, change]) =>
          element("div", {}, element("dt", {}, name),
            element("dd", {}, `${words.change(change.mean)} kg `,
              element("span", { class: "faint" }, `(${words.range(words.change(change.lower), words.change(change.upper))})`))))),
      ...signsToStop(phase, words),
    );
  }

  function signsToStop(phase, words) {
    if (!phase.ends_early_when?.length) return [];
    return [
      element("p", { class: "stop" }, words.endsEarly),
      element("ul", { class: "list", lang: words.messages }, ...phase.ends_early_when.map((each) => element("li", {}, each.text))),
    ];
  }

  // What a cap has said, the warning of the same rule does not say again.
  function toldOnce(rails) {
    const capped = new Set(rails.filter((rail) => rail.action === "capped").map((rail) => rail.id));
    return rails.filter((rail) => !(capped.has(rail.id) && SAID_BY_THE_CAP.includes(rail.code)));
  }

  function railsPart(plan, words) {
    if (!plan.guard_rails.length) return null;
    return element(
      "section", {},
      element("h3", {}, words.rails),
      element("ul", { class: "list" },
        ...toldOnce(plan.guard_rails).map((rail) =>
          element("li", {}, element("strong", {}, words.kind(rail.action)), ": ",
            element("span", { lang: words.messages }, rail.text)))),
    );
  }

  function reasonsPart(plan, phase, words) {
    const further = (phase.guidance ?? []).filter((each) => !TO_DO.includes(each.code));
    const said = [...new Set([...plan.reasons, ...phase.reasons, ...further].map((each) => each.text))];
    if (!said.length) return null;
    return element(
      "details", { class: "reasons" },
      element("summary", {}, words.reasons),
      element("ul", { class: "list", lang: words.messages }, ...said.map((text) => element("li", {}, text))),
    );
  }

  function infeasibleCard(plan, words) {
    const nearest = plan.nearest ?? {};
    const near = [
      [isSpared(plan) ? null : nearest.fat_loss_kg, (value) => words.nearestFat(words.number(value, 1))],
      [nearest.weeks, (value) => words.nearestWeeks(words.number(value), words.kind(nearest.weeks_kind ?? "cut"))],
      [nearest.deficit_kcal, (value) => words.nearestDeficit(words.number(value))],
    ].filter(([value]) => typeof value === "number");
    const why = plan.reasons.filter(({ code }) => !code.startsWith(SAID_BY_HEADING) && !code.startsWith(OF_EQUATIONS));
    return element(
      "article", { class: "card" },
      element("h2", {}, words.infeasible),
      element(
        "div", { class: "parts" },
        why.length
          ? element("ul", { class: "list", lang: words.messages }, ...why.map((reason) => element("li", {}, reason.text)))
          : null,
        near.length
          ? element("section", { class: "nearest" }, element("h3", {}, words.nearest),
              element("ul", { class: "list" }, ...near.map(([value, text]) => element("li", {}, text(value)))))
          : null,
        cautionsPart(plan, words),
        railsPart(plan, words),
      ),
    );
  }

  // A refusal is for the member, with its referral. What went wrong between backend and service is not.
  function problemCard(problem, words) {
    if (problem.status !== 422) return notice(words, words.unavailable);
    return element(
      "article", { class: "card" },
      element("h2", {}, words.refused),
      element(
        "div", { class: "parts" },
        element("section", { class: "cautions", lang: words.messages },
          element("h3", {}, problem.title), element("p", {}, problem.detail)),
        element("p", {}, words.advice),
      ),
    );
  }

  const notice = (words, text) =>
    element("article", { class: "card" }, element("h2", {}, words.plan), element("p", { role: "alert" }, text));

  // The picture

  function drawForecast(weeks, startWeight, words, today, width) {
    const height = Math.round(Math.min(300, Math.max(190, width * 0.45)));
    const [left, right, top, bottom] = [38, 8, 42, 24];
    const points = weeks.map(({ week }) => {
      const { date, weight_kg: weight, carried_kg: carried } = week.at_end;
      return { day: dayOf(date), weight, tissue: weight.mean - carried.mean };
    });
    const [start, end] = [weeks[0].from, weeks.at(-1).to];
    if (typeof startWeight === "number") {
      const weight = { lower: startWeight, mean: startWeight, upper: startWeight };
      points.unshift({ day: start, weight, tissue: startWeight }); // carried mass counts from here
    }
    const least = Math.min(...points.map((p) => Math.min(p.weight.lower, p.tissue)));
    const most = Math.max(...points.map((p) => Math.max(p.weight.upper, p.tissue)));
    const step = stepFor(most - least, height < 240 ? 5 : 6);
    const [low, high] = [Math.floor(least / step) * step, Math.ceil(most / step) * step];
    const x = (day) => round(left + ((day - start) / Math.max(end - start, DAY)) * (width - left - right));
    const y = (value) => round(top + ((high - value) / Math.max(high - low, step)) * (height - top - bottom));
    const along = (list, value) => list.map((p) => `${x(p.day)} ${y(value(p))}`).join("L");
    const between = (upper, lower) => `M${along(points, upper)}L${along([...points].reverse(), lower)}Z`;

    const [begin, finish] = [points[0], points.at(-1)];
    const described = words.picture(
      words.number(begin.weight.mean, 1), words.date(begin.day), words.number(finish.weight.mean, 1),
      words.date(finish.day), words.number(finish.weight.lower, 1), words.number(finish.weight.upper, 1));
    const drawing = svg("svg", { width, height, viewBox: `0 0 ${width} ${height}`, role: "img", "aria-label": `${words.forecast}. ${described}` });

    for (let value = low; value <= high + step / 2; value += step) {
      drawing.append(
        svg("path", { class: "axis", d: `M${left} ${y(value)}H${width - right}` }),
        svg("text", { x: left - 6, y: y(value) + 4, "text-anchor": "end" }, words.number(value, step < 1 ? 1 : 0)));
    }
    drawing.append(svg("text", { x: left - 6, y: 10, "text-anchor": "end" }, "kg"));
    const letter = 7; // pixels, about
    phaseSpans(weeks).forEach(({ phase, from, to }, i, { length }) => {
      const [edge, far] = [x(from), x(Math.min(to + DAY, end))];
      if (i % 2) drawing.append(svg("rect", { class: "shade", x: edge, y: top, width: round(far - edge), height: height - top - bottom }));
      if (i) drawing.append(svg("path", { class: "edge", d: `M${edge} ${top - 8}V${height - bottom}` }));
      const name = words.kind(phase.kind);
      // The name of a phase that is too short for it stands a line higher, over its middle.
      const half = (name.length * letter) / 2;
      const middle = Math.min(Math.max((edge + far) / 2, left + half), width - right - half);
      if (far - edge > name.length * letter + 8) drawing.append(svg("text", { x: edge + 4, y: top - 6 }, name));
      else drawing.append(svg("text", { x: round(middle), y: top - 22, "text-anchor": "middle" }, name));
      if (far - edge > (i + 1 < length ? 46 : 92)) drawing.append(svg("text", { x: edge, y: height - 8 }, words.date(from)));
    });
    drawing.append(svg("text", { x: width - right, y: height - 8, "text-anchor": "end" }, words.date(end)));
    drawing.append(
      svg("path", { class: "band", d: between((p) => p.weight.upper, (p) => p.weight.lower) }),
      svg("path", { class: "carried", d: between((p) => p.weight.mean, (p) => p.tissue) }),
      svg("path", { class: "tissue", d: `M${along(points, (p) => p.tissue)}` }),
      svg("path", { class: "weight", d: `M${along(points, (p) => p.weight.mean)}` }));
    if (start <= today && today <= end) {
      const isLate = x(today) > width - right - 50;
      drawing.append(
        svg("path", { class: "today", d: `M${x(today)} ${top}V${height - bottom}` }),
        svg("text", { x: x(today) + (isLate ? -4 : 4), y: height - bottom - 6, "text-anchor": isLate ? "end" : "start" }, words.now));
    }
    return drawing;
  }

  function phaseSpans(weeks) {
    const spans = [];
    for (const { phase, from, to } of weeks) {
      if (spans.at(-1)?.phase === phase) spans.at(-1).to = to;
      else spans.push({ phase, from, to });
    }
    return spans;
  }

  function stepFor(extent, lines) {
    const rough = Math.max(extent, 0.1) / lines;
    const power = 10 ** Math.floor(Math.log10(rough));
    return [1, 2, 5, 10].map((each) => each * power).find((each) => each >= rough);
  }

  const round = (value) => Math.round(value * 10) / 10;

  // Words, dates, elements

  function wordsFor(tag, messages) {
    const asked = String(tag ?? "").toLowerCase();
    const language = Object.keys(LABELS).find((name) => asked.split("-")[0] === name) ?? "en";
    const labels = LABELS[language];
    const locale = /^[a-z]{2}-[a-z]{2}$/.test(asked) && asked.startsWith(language) ? asked : language; // en-GB: day first
    const day = new Intl.DateTimeFormat(locale, { day: "numeric", month: "short", timeZone: "UTC" });
    const weekday = new Intl.DateTimeFormat(locale, { weekday: "short", timeZone: "UTC" });
    const number = (value, decimals = 0) => {
      if (typeof value !== "number" || !Number.isFinite(value)) throw new TypeError("not a number");
      const options = { minimumFractionDigits: decimals, maximumFractionDigits: decimals, signDisplay: "negative" };
      return value.toLocaleString(locale, options).replace("-", "−");
    };
    const change = (value) => (Number(value.toFixed(1)) > 0 ? `+${number(value, 1)}` : number(value, 1));
    return {
      ...labels,
      language,
      number,
      change,
      percent: (share) => `${number(share * 100)}${language === "en" ? "" : "\u00a0"}%`,
      date: (moment) => day.format(new Date(moment)),
      weekday: (moment) => weekday.format(new Date(moment)),
      kind: (name) => (Object.hasOwn(labels, name) && typeof labels[name] === "string" ? labels[name] : String(name).replaceAll("_", " ")),
      messages,
    };
  }

  // A civil date as the milliseconds of its midnight in UTC, so that no time zone moves it.
  function dayOf(text) {
    const parts = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text ?? "");
    return parts ? Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3])) : null;
  }

  function span(week) {
    const from = dayOf(week.start_date);
    if (from === null || !(week.days > 0)) throw new TypeError("a week without a date");
    return { from, to: from + (week.days - 1) * DAY };
  }

  function localToday() {
    const now = new Date();
    return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate());
  }

  const element = (name, attributes = {}, ...children) => filled(document.createElement(name), attributes, children);

  const svg = (name, attributes = {}, ...children) =>
    filled(document.createElementNS("http://www.w3.org/2000/svg", name), attributes, children);

  function filled(made, attributes, children) {
    for (const [name, value] of Object.entries(attributes)) if (value !== null) made.setAttribute(name, String(value));
    made.append(...children.filter((child) => child !== null && child !== undefined && child !== ""));
    return made;
  }

  if (!customElements.get("steelyard-plan")) customElements.define("steelyard-plan", SteelyardPlan);
})();
