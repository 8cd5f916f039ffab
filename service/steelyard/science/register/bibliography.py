"""Every publication, standard and table that the catalogue cites, registered once under a short id.

An id is the first author (or the issuing body) and the year. Import this module before registering an entry
that cites one of them.
"""

from .evidence import source

# --- resting energy -------------------------------------------------------------------------------------
MIFFLIN_1990 = source(
    "mifflin_1990",
    "Mifflin MD, St Jeor ST, Hill LA, Scott BJ, Daugherty SA, Koh YO. A new predictive equation for resting "
    "energy expenditure in healthy individuals. Am J Clin Nutr 1990;51:241-7",
    "10.1093/ajcn/51.2.241",
)
ROZA_1984 = source(
    "roza_1984",
    "Roza AM, Shizgal HM. The Harris Benedict equation reevaluated. Am J Clin Nutr 1984;40:168-82",
    "10.1093/ajcn/40.1.168",
)
CUNNINGHAM_1980 = source(
    "cunningham_1980",
    "Cunningham JJ. A reanalysis of the factors influencing basal metabolic rate in normal adults. "
    "Am J Clin Nutr 1980;33:2372-4",
    "10.1093/ajcn/33.11.2372",
)
CUNNINGHAM_1991 = source(
    "cunningham_1991",
    "Cunningham JJ. Body composition as a determinant of energy expenditure: a synthetic review and a "
    "proposed "
    "general prediction equation. Am J Clin Nutr 1991;54:963-9",
    "10.1093/ajcn/54.6.963",
)
MCARDLE_TEXTBOOK = source(
    "mcardle_textbook",
    "McArdle WD, Katch FI, Katch VL. Exercise Physiology (textbook, several editions)",
)
HENRY_2005 = source(
    "henry_2005",
    "Henry CJK. Basal metabolic rate studies in humans: measurement and development of new equations. "
    "Public Health Nutr 2005;8(7A):1133-52",
    "10.1079/PHN2005801",
)
SCHOFIELD_1985 = source(
    "schofield_1985",
    "Schofield WN. Predicting basal metabolic rate, new standards and review of previous work. "
    "Hum Nutr Clin Nutr 1985;39C(Suppl 1):5-41",
)
FAO_1985 = source(
    "fao_1985",
    "FAO/WHO/UNU. Energy and protein requirements. World Health Organ Tech Rep Ser 724, 1985",
)
OWEN_1986 = source(
    "owen_1986",
    "Owen OE et al. A reappraisal of caloric requirements in healthy women. Am J Clin Nutr 1986;44:1-19",
)
OWEN_1987 = source(
    "owen_1987",
    "Owen OE et al. A reappraisal of the caloric requirements of men. Am J Clin Nutr 1987;46:875-85",
)
TEN_HAAF_2014 = source(
    "ten_haaf_2014",
    "ten Haaf T, Weijs PJM. Resting energy expenditure prediction in recreational athletes of 18-35 years. "
    "PLoS One 2014;9:e108460",
    "10.1371/journal.pone.0108460",
)
TINSLEY_2019 = source(
    "tinsley_2019",
    "Tinsley GM, Graybeal AJ, Moore ML. Resting metabolic rate in muscular physique athletes. "
    "Eur J Sport Sci 2019;19:399-406",
    "10.1080/17461391.2018.1517175",
)
MULLER_2004 = source(
    "muller_2004",
    "Müller MJ et al. World Health Organization equations have shortcomings for predicting resting energy "
    "expenditure in persons from a modern, affluent population. Am J Clin Nutr 2004;80:1379-90",
    "10.1093/ajcn/80.5.1379",
)

# --- total energy and food energy -----------------------------------------------------------------------
NASEM_2023 = source(
    "nasem_2023",
    "National Academies of Sciences, Engineering, and Medicine. Dietary Reference Intakes for Energy. 2023",
    "10.17226/26818",
)
FAO_2004 = source(
    "fao_2004",
    "FAO/WHO/UNU. Human energy requirements. FAO Food and Nutrition Technical Report Series 1, 2004",
)
HEALTH_CANADA_DRI = source(
    "health_canada_dri",
    "Health Canada. Dietary reference intakes tables: energy, and the physical activity level categories",
)
AINSWORTH_2011 = source(
    "ainsworth_2011",
    "Ainsworth BE et al. 2011 Compendium of Physical Activities. Med Sci Sports Exerc 2011;43:1575-81",
    "10.1249/MSS.0b013e31821ece12",
)
HERRMANN_2024 = source(
    "herrmann_2024",
    "Herrmann SD et al. 2024 Adult Compendium of Physical Activities. J Sport Health Sci 2024;13:6-12",
    "10.1016/j.jshs.2023.10.010",
)
BYRNE_2005 = source(
    "byrne_2005",
    "Byrne NM et al. Metabolic equivalent: one size does not fit all. J Appl Physiol 2005;99:1112-9",
    "10.1152/japplphysiol.00023.2004",
)
TUDOR_LOCKE_2019 = source(
    "tudor_locke_2019",
    "Tudor-Locke C et al. Walking cadence (steps/min) and intensity in 21-40 year olds: CADENCE-adults. "
    "Int J Behav Nutr Phys Act 2019;16:8",
    "10.1186/s12966-019-0769-6",
)
WESTERTERP_2013 = source(
    "westerterp_2013",
    "Westerterp KR. Physical activity and physical activity induced energy expenditure in humans: measurement, "
    "determinants, and effects. Front Physiol 2013;4:90",
    "10.3389/fphys.2013.00090",
)
PONTZER_2021 = source(
    "pontzer_2021",
    "Pontzer H, Yamada Y, Sagayama H, et al. Daily energy expenditure through the human life course. Science "
    "2021;373:808-12",
    "10.1126/science.abe5017",
)
BLACK_2000 = source(
    "black_2000",
    "Black AE. Critical evaluation of energy intake using the Goldberg cut-off for energy intake:basal metabolic "
    "rate. A practical guide to its calculation, use and limitations. Int J Obes 2000;24:1119-30",
)
EU_1169_2011 = source(
    "eu_1169_2011",
    "Regulation (EU) No 1169/2011 of the European Parliament and of the Council on the provision of food information "
    "to consumers, Annex XIV: conversion factors for the calculation of energy. 2011",
)

# --- body composition -----------------------------------------------------------------------------------
HODGDON_1984_MEN = source(
    "hodgdon_1984_men",
    "Hodgdon JA, Beckett MB. Prediction of percent body fat for U.S. Navy men from body circumferences and "
    "height. Naval Health Research Center Report 84-11, 1984",
)
HODGDON_1984_WOMEN = source(
    "hodgdon_1984_women",
    "Hodgdon JA, Beckett MB. Prediction of percent body fat for U.S. Navy women from body circumferences and "
    "height. Naval Health Research Center Report 84-29, 1984",
)
JACKSON_1978 = source(
    "jackson_1978",
    "Jackson AS, Pollock ML. Generalized equations for predicting body density of men. Br J Nutr 1978;40:497-504",
    "10.1079/BJN19780152",
)
JACKSON_1980 = source(
    "jackson_1980",
    "Jackson AS, Pollock ML, Ward A. Generalized equations for predicting body density of women. "
    "Med Sci Sports Exerc 1980;12:175-82",
)
DURNIN_1974 = source(
    "durnin_1974",
    "Durnin JVGA, Womersley J. Body fat assessed from total body density and its estimation from skinfold "
    "thickness. Br J Nutr 1974;32:77-97",
    "10.1079/BJN19740060",
)
SIRI_1961 = source(
    "siri_1961",
    "Siri WE. Body composition from fluid spaces and density. In: Techniques for Measuring Body Composition. "
    "National Academy of Sciences 1961:223-44",
)
BROZEK_1963 = source(
    "brozek_1963",
    "Brozek J et al. Densitometric analysis of body composition. Ann N Y Acad Sci 1963;110:113-40",
    "10.1111/j.1749-6632.1963.tb17079.x",
)
DEURENBERG_1991 = source(
    "deurenberg_1991",
    "Deurenberg P et al. Body mass index as a measure of body fatness: age- and sex-specific prediction "
    "formulas. "
    "Br J Nutr 1991;65:105-14",
    "10.1079/BJN19910073",
)
GALLAGHER_2000 = source(
    "gallagher_2000",
    "Gallagher D et al. Healthy percentage body fat ranges: an approach for developing guidelines based "
    "on body "
    "mass index. Am J Clin Nutr 2000;72:694-701",
    "10.1093/ajcn/72.3.694",
)
JACKSON_2002 = source(
    "jackson_2002",
    "Jackson AS et al. The effect of sex, age and race on estimating percentage body fat from body mass "
    "index. "
    "Int J Obes 2002;26:789-96",
    "10.1038/sj.ijo.0802006",
)
HEO_2012 = source(
    "heo_2012",
    "Heo M, Faith MS, Pietrobelli A, Heymsfield SB. Percentage of body fat cutoffs by sex, age, and race-ethnicity in "
    "the US adult population from NHANES 1999-2004. Am J Clin Nutr 2012;95:594-602",
    "10.3945/ajcn.111.025171",
)
DAS_2003 = source(
    "das_2003",
    "Das SK, Roberts SB, Kehayias JJ, et al. Body composition assessment in extreme obesity and after massive weight "
    "loss induced by gastric bypass surgery. Am J Physiol Endocrinol Metab 2003;284:E1080-8",
    "10.1152/ajpendo.00185.2002",
)
GOMEZ_AMBROSI_2012 = source(
    "gomez_ambrosi_2012",
    "Gómez-Ambrosi J, Silva C, Catalán V, et al. Clinical usefulness of a new equation for estimating body fat. "
    "Diabetes Care 2012;35:383-8",
    "10.2337/dc11-1334",
)
NICE_2006 = source(
    "nice_cg32",
    "National Institute for Health and Care Excellence. Nutrition support for adults, clinical guideline 32, 2006, "
    "1.4: people at risk of refeeding problems",
)
THURBER_2019 = source(
    "thurber_2019",
    "Thurber C et al. Extreme events reveal an alimentary limit on sustained maximal human energy expenditure. "
    "Sci Adv 2019;5:eaaw0341",
    "10.1126/sciadv.aaw0341",
)
KOURI_1995 = source(
    "kouri_1995",
    "Kouri EM et al. Fat-free mass index in users and nonusers of anabolic-androgenic steroids. "
    "Clin J Sport Med 1995;5:223-8",
    "10.1097/00042752-199510000-00003",
)
VAN_DER_PLOEG_2003 = source(
    "van_der_ploeg_2003",
    "van der Ploeg GE, Withers RT, Laforgia J. Percent body fat via DEXA: comparison with a four-compartment model. "
    "J Appl Physiol 2003;94:499-506",
)
MOON_2007 = source(
    "moon_2007",
    "Moon JR et al. Percent body fat estimations in college women using field and laboratory methods: "
    "a three-compartment model approach. J Int Soc Sports Nutr 2007;4:16",
    "10.1186/1550-2783-4-16",
)
MOON_2008 = source(
    "moon_2008",
    "Moon JR et al. Percent body fat estimations in college men using field and laboratory methods: "
    "a three-compartment model approach. Dyn Med 2008;7:7",
    "10.1186/1476-5918-7-7",
)
PETERSON_2011 = source(
    "peterson_2011",
    "Peterson JT, Repovich WES, Parascand CR. Accuracy of consumer grade bioelectrical impedance analysis devices "
    "compared to air displacement plethysmography. Int J Exerc Sci 2011;4:176-84",
)
FRIEDL_1994 = source(
    "friedl_1994",
    "Friedl KE et al. Lower limit of body fat in healthy active men. J Appl Physiol 1994;77:933-40",
)
ROBERTS_1998 = source(
    "roberts_1998",
    "Roberts WO. Certifying wrestlers' minimum weight: a new requirement. Phys Sportsmed 1998;26(10)",
)

# --- partition, tissue energy and the dynamic model -----------------------------------------------------
HALL_2008 = source(
    "hall_2008",
    "Hall KD. What is the required energy deficit per unit weight loss? Int J Obes 2008;32:573-6",
    "10.1038/sj.ijo.0803720",
)
FORBES_1987 = source(
    "forbes_1987",
    "Forbes GB. Lean body mass-body fat interrelationships in humans. Nutr Rev 1987;45:225-31",
    "10.1111/j.1753-4887.1987.tb02684.x",
)
HALL_2007 = source(
    "hall_2007",
    "Hall KD. Body fat and fat-free mass inter-relationships: Forbes's theory revisited. Br J Nutr 2007;97:1059-63",
    "10.1017/S0007114507691946",
)
HALL_2010 = source(
    "hall_2010",
    "Hall KD. Predicting metabolic adaptation, body weight change, and energy intake in humans. "
    "Am J Physiol Endocrinol Metab 2010;298:E449-66",
    "10.1152/ajpendo.00559.2009",
)
HALL_2011 = source(
    "hall_2011",
    "Hall KD, Sacks G, Chandramohan D, Chow CC, Wang YC, Gortmaker SL, Swinburn BA. Quantification of "
    "the effect "
    "of energy imbalance on bodyweight. Lancet 2011;378:826-37, and its web appendix",
    "10.1016/S0140-6736(11)60812-X",
)
HALL_CHOW_2011 = source(
    "hall_chow_2011",
    "Hall KD, Chow CC. Estimating changes in free-living energy intake and its confidence interval. "
    "Am J Clin Nutr 2011;94:66-74",
    "10.3945/ajcn.111.014399",
)
SANGHVI_2015 = source(
    "sanghvi_2015",
    "Sanghvi A, Redman LM, Martin CK, Ravussin E, Hall KD. Validation of an inexpensive and accurate "
    "mathematical "
    "method to measure long-term changes in free-living energy intake. Am J Clin Nutr 2015;102:353-8",
    "10.3945/ajcn.115.111070",
)

# --- daily weights --------------------------------------------------------------------------------------
ROBINSON_1965 = source(
    "robinson_1965",
    "Robinson MF, Watson PE. Day-to-day variations in body-weight of young women. Br J Nutr 1965;19:225-35",
)
TURICCHI_2020 = source(
    "turicchi_2020",
    "Turicchi J et al. Weekly, seasonal and holiday body weight fluctuation patterns among individuals engaged in a "
    "European multi-centre behavioural weight loss maintenance intervention. PLoS One 2020;15:e0232152",
    "10.1371/journal.pone.0232152",
)
KANELLAKIS_2023 = source(
    "kanellakis_2023",
    "Kanellakis S et al. Changes in body weight and body composition during the menstrual cycle. "
    "Am J Hum Biol 2023;35:e23951",
    "10.1002/ajhb.23951",
)

# --- rates, targets and screening -----------------------------------------------------------------------
ALPERT_2005 = source(
    "alpert_2005",
    "Alpert SS. A limit on the energy transfer rate from the human fat store in hypophagia. J Theor Biol 2005;233:1-13",
    "10.1016/j.jtbi.2004.08.029",
)
GARTHE_2011 = source(
    "garthe_2011",
    "Garthe I et al. Effect of two different weight-loss rates on body composition and strength and "
    "power-related "
    "performance in elite athletes. Int J Sport Nutr Exerc Metab 2011;21:97-104",
    "10.1123/ijsnem.21.2.97",
)
HELMS_2014 = source(
    "helms_2014",
    "Helms ER, Aragon AA, Fitschen PJ. Evidence-based recommendations for natural bodybuilding contest "
    "preparation: "
    "nutrition and supplementation. J Int Soc Sports Nutr 2014;11:20",
    "10.1186/1550-2783-11-20",
)
MORTON_2018 = source(
    "morton_2018",
    "Morton RW et al. A systematic review, meta-analysis and meta-regression of the effect of protein "
    "supplementation on resistance training-induced gains. Br J Sports Med 2018;52:376-84",
    "10.1136/bjsports-2017-097608",
)
JAGER_2017 = source(
    "jager_2017",
    "Jäger R et al. International Society of Sports Nutrition position stand: protein and exercise. "
    "J Int Soc Sports Nutr 2017;14:20",
    "10.1186/s12970-017-0177-8",
)
IRAKI_2019 = source(
    "iraki_2019",
    "Iraki J et al. Nutrition recommendations for bodybuilders in the off-season: a narrative review. "
    "Sports 2019;7:154",
    "10.3390/sports7070154",
)
MOUNTJOY_2023 = source(
    "mountjoy_2023",
    "Mountjoy M et al. 2023 International Olympic Committee's consensus statement on relative energy "
    "deficiency "
    "in sport (REDs). Br J Sports Med 2023;57:1073-97",
    "10.1136/bjsports-2023-106994",
)
LOUCKS_2003 = source(
    "loucks_2003",
    "Loucks AB, Thuma JR. Luteinizing hormone pulsatility is disrupted at a threshold of energy "
    "availability in "
    "regularly menstruating women. J Clin Endocrinol Metab 2003;88:297-311",
    "10.1210/jc.2002-020369",
)
ARETA_2021 = source(
    "areta_2021",
    "Areta JL, Taylor HL, Koehler K. Low energy availability: history, definition and evidence of its endocrine, "
    "metabolic and physiological effects in prospective studies in females and males. "
    "Eur J Appl Physiol 2021;121:1-21",
    "10.1007/s00421-020-04516-0",
)
FAGERBERG_2018 = source(
    "fagerberg_2018",
    "Fagerberg P. Negative consequences of low energy availability in natural male bodybuilding: a review. "
    "Int J Sport Nutr Exerc Metab 2018;28:385-402",
    "10.1123/ijsnem.2016-0332",
)
WHITTAKER_2021 = source(
    "whittaker_2021",
    "Whittaker J, Wu K. Low-fat diets and testosterone in men: systematic review and meta-analysis of "
    "intervention "
    "studies. J Steroid Biochem Mol Biol 2021;210:105878",
    "10.1016/j.jsbmb.2021.105878",
)
IOM_2005 = source(
    "iom_2005",
    "Institute of Medicine. Dietary reference intakes for energy, carbohydrate, fiber, fat, fatty acids, "
    "cholesterol, protein, and amino acids. 2005",
    "10.17226/10490",
)
WHO_BMI_2000 = source(
    "who_bmi_2000",
    "World Health Organization. Obesity: preventing and managing the global epidemic. "
    "World Health Organ Tech Rep Ser 894, 2000",
)
JENSEN_2014 = source(
    "jensen_2014",
    "Jensen MD et al. 2013 AHA/ACC/TOS guideline for the management of overweight and obesity in adults. "
    "Circulation 2014;129:S102-38",
    "10.1161/01.cir.0000437739.71477.ee",
)
THOMAS_2016 = source(
    "thomas_2016",
    "Thomas DT et al. American College of Sports Medicine joint position statement: nutrition and athletic "
    "performance. Med Sci Sports Exerc 2016;48:543-68",
    "10.1249/MSS.0000000000000852",
)
MORGAN_1999 = source(
    "morgan_1999",
    "Morgan JF et al. The SCOFF questionnaire: assessment of a new screening tool for eating disorders. "
    "BMJ 1999;319:1467-8",
    "10.1136/bmj.319.7223.1467",
)

# --- trials of dieting, overfeeding and training --------------------------------------------------------
CAMPBELL_2020 = source(
    "campbell_2020",
    "Campbell BI et al. Intermittent energy restriction attenuates the loss of fat free mass in "
    "resistance trained "
    "individuals: a randomized controlled trial. J Funct Morphol Kinesiol 2020;5:19",
    "10.3390/jfmk5010019",
)
METTLER_2010 = source(
    "mettler_2010",
    "Mettler S et al. Increased protein intake reduces lean body mass loss during weight loss in athletes. "
    "Med Sci Sports Exerc 2010;42:326-37",
    "10.1249/MSS.0b013e3181b2ef8e",
)
BOUCHARD_1990 = source(
    "bouchard_1990",
    "Bouchard C et al. The response to long-term overfeeding in identical twins. N Engl J Med 1990;322:1477-82",
    "10.1056/NEJM199005243222101",
)
BENITO_2020 = source(
    "benito_2020",
    "Benito PJ et al. A systematic review with meta-analysis of the effect of resistance training on "
    "whole-body "
    "muscle growth in healthy adult males. Int J Environ Res Public Health 2020;17:1285",
    "10.3390/ijerph17041285",
)

# Training, protein and overfeeding: what bends the partition between fat and lean.
WEINHEIMER_2010 = source(
    "weinheimer_2010",
    "Weinheimer EM, Sands LP, Campbell WW. A systematic review of the separate and combined effects of energy "
    "restriction and exercise on fat-free mass in middle-aged and older adults. Nutr Rev 2010;68:375-88",
    "10.1111/j.1753-4887.2010.00298.x",
)
BALLOR_1994 = source(
    "ballor_1994",
    "Ballor DL, Poehlman ET. Exercise-training enhances fat-free mass preservation during diet-induced weight loss: "
    "a meta-analytical finding. Int J Obes Relat Metab Disord 1994;18:35-40",
)
WYCHERLEY_2012 = source(
    "wycherley_2012",
    "Wycherley TP, Moran LJ, Clifton PM, Noakes M, Brinkworth GD. Effects of energy-restricted high-protein, "
    "low-fat compared with standard-protein, low-fat diets: a meta-analysis of randomized controlled trials. "
    "Am J Clin Nutr 2012;96:1281-98",
    "10.3945/ajcn.112.044321",
)
MURPHY_2022 = source(
    "murphy_2022",
    "Murphy C, Koehler K. Energy deficiency impairs resistance training gains in lean mass but not strength: "
    "a meta-analysis and meta-regression. Scand J Med Sci Sports 2022;32:125-37",
    "10.1111/sms.14075",
)
LEVINE_1999 = source(
    "levine_1999",
    "Levine JA, Eberhardt NL, Jensen MD. Role of nonexercise activity thermogenesis in resistance to fat gain "
    "in humans. Science 1999;283:212-4",
    "10.1126/science.283.5399.212",
)
SCHLOGL_2015 = source(
    "schlogl_2015",
    "Schlögl M, Piaggi P, Pannacciuli N, Bonfiglio SM, Krakoff J, Thearle MS. Energy expenditure responses to "
    "fasting and overfeeding identify phenotypes associated with weight change. Diabetes 2015;64:3680-9",
    "10.2337/db15-0382",
)
TRANSIT_2011 = source(
    "transit_2011",
    "Study of segmental colonic transit time in healthy men (its author was not seen). Hepatogastroenterology "
    "2011;58:1519-22",
    "10.5754/hge10849",
)
ROBERTS_2020 = source(
    "roberts_2020",
    "Roberts BM, Nuckols G, Krieger JW. Sex differences in resistance training: a systematic review and "
    "meta-analysis. J Strength Cond Res 2020;34:1448-60",
    "10.1519/JSC.0000000000003521",
)
CONVERTINO_1991 = source(
    "convertino_1991",
    "Convertino VA. Blood volume: its adaptation to endurance training. Med Sci Sports Exerc 1991;23:1338-48",
)
BRAY_2012 = source(
    "bray_2012",
    "Bray GA, Smith SR, de Jonge L, et al. Effect of dietary protein content on weight gain, energy expenditure, and "
    "body composition during overeating: a randomized controlled trial. JAMA 2012;307:47-55",
    "10.1001/jama.2011.1918",
)
DIAZ_1992 = source(
    "diaz_1992",
    "Diaz EO, Prentice AM, Goldberg GR, Murgatroyd PR, Coward WA. Metabolic response to experimental overfeeding in "
    "lean and overweight healthy volunteers. Am J Clin Nutr 1992;56:641-55",
    "10.1093/ajcn/56.4.641",
)
CHASTON_2007 = source(
    "chaston_2007",
    "Chaston TB, Dixon JB, O'Brien PE. Changes in fat-free mass during significant weight loss: a systematic review. "
    "Int J Obes 2007;31:743-50",
    "10.1038/sj.ijo.0803483",
)
HALL_2015 = source(
    "hall_2015",
    "Hall KD, Bemis T, Brychta R, et al. Calorie for calorie, dietary fat restriction results in more body fat "
    "loss than carbohydrate restriction in people with obesity. Cell Metab 2015;22:427-36",
    "10.1016/j.cmet.2015.07.021",
)
HALL_2016 = source(
    "hall_2016",
    "Hall KD, Chen KY, Guo J, et al. Energy expenditure and body composition changes after an isocaloric "
    "ketogenic diet in overweight and obese men. Am J Clin Nutr 2016;104:324-33",
    "10.3945/ajcn.116.133561",
)
MULLER_2015 = source(
    "muller_2015",
    "Müller MJ, Enderle J, Pourhassan M, et al. Metabolic adaptation to caloric restriction and subsequent "
    "refeeding: the Minnesota Starvation Experiment revisited. Am J Clin Nutr 2015;102:807-19",
    "10.3945/ajcn.115.109173",
)
SAGAYAMA_2014 = source(
    "sagayama_2014",
    "Sagayama H, Jikumaru Y, Hirata A, et al. Measurement of body composition in response to a short period of "
    "overfeeding. J Physiol Anthropol 2014;33:29",
    "10.1186/1880-6805-33-29",
)
HEER_2000 = source(
    "heer_2000",
    "Heer M, Baisch F, Kropp J, Gerzer R, Drummer C. High dietary sodium chloride consumption may not induce "
    "body fluid retention in humans. Am J Physiol Renal Physiol 2000;278:F585-95",
    "10.1152/ajprenal.2000.278.4.F585",
)
HEYMSFIELD_2011 = source(
    "heymsfield_2011",
    "Heymsfield SB, Thomas D, Nguyen AM, et al. Voluntary weight loss: systematic review of early phase body "
    "composition changes. Obes Rev 2011;12:e348-61",
    "10.1111/j.1467-789X.2010.00767.x",
)
FORBES_1986 = source(
    "forbes_1986",
    "Forbes GB, Brown MR, Welle SL, Lipinski BA. Deliberate overfeeding in women and men: energy cost and "
    "composition of the weight gain. Br J Nutr 1986;56:1-9",
    "10.1079/BJN19860080",
)
GARTHE_2013 = source(
    "garthe_2013",
    "Garthe I, Raastad T, Refsnes PE, Sundgot-Borgen J. Effect of nutritional intervention on body composition "
    "and performance in elite athletes. Eur J Sport Sci 2013;13:295-303",
    "10.1080/17461391.2011.643923",
)
LONGLAND_2016 = source(
    "longland_2016",
    "Longland TM, Oikawa SY, Mitchell CJ, Devries MC, Phillips SM. Higher compared with lower dietary protein "
    "during an energy deficit combined with intense exercise promotes greater lean mass gain and fat mass "
    "loss. Am J Clin Nutr 2016;103:738-46",
    "10.3945/ajcn.115.119339",
)
RACETTE_2012 = source(
    "racette_2012",
    "Racette SB, Das SK, Bhapkar M, et al. Approaches for quantifying energy intake and % calorie restriction during "
    "calorie restriction interventions in humans: the multicenter CALERIE study. Am J Physiol Endocrinol Metab "
    "2012;302:E441-8",
    "10.1152/ajpendo.00290.2011",
)
DORLING_2021 = source(
    "dorling_2021",
    "Dorling JL, van Vliet S, Huffman KM, et al. Effects of caloric restriction on human physiological, psychological, "
    "and behavioral outcomes: highlights from CALERIE phase 2. Nutr Rev 2021;79:98-113",
    "10.1093/nutrit/nuaa085",
)
HUOVINEN_2015 = source(
    "huovinen_2015",
    "Huovinen HT, Hulmi JJ, Isolehto J, et al. Body composition and power performance improved after weight "
    "reduction in male athletes without hampering hormonal balance. J Strength Cond Res 2015;29:29-36",
    "10.1519/JSC.0000000000000619",
)
SCHOENFELD_2018 = source(
    "schoenfeld_2018",
    "Schoenfeld BJ, Aragon AA. How much protein can the body use in a single meal for muscle-building? "
    "Implications for daily protein distribution. J Int Soc Sports Nutr 2018;15:10",
    "10.1186/s12970-018-0215-1",
)
HEVIA_LARRAIN_2021 = source(
    "hevia_larrain_2021",
    "Hevia-Larraín V, Gualano B, Longobardi I, et al. High-protein plant-based diet versus a protein-matched "
    "omnivorous diet to support resistance training adaptations. Sports Med 2021;51:1317-30",
    "10.1007/s40279-021-01434-9",
)
LINSTROM_2001 = source(
    "linstrom_2001",
    "Linstrom PJ, Mallard WG. The NIST Chemistry WebBook: a chemical data resource on the internet. J Chem Eng Data "
    "2001;46:1059-63 (ethanol: enthalpy of combustion of the liquid 1366.8 kJ/mol)",
    "10.1021/je000236i",
)
CAREAU_2021 = source(
    "careau_2021",
    "Careau V, Halsey LG, Pontzer H, et al. Energy compensation and adiposity in humans. Curr Biol 2021;31:4659-66 "
    "(abstract: 28 % through lower basal expenditure, n 1754)",
    "10.1016/j.cub.2021.08.016",
)
DHURANDHAR_2015 = source(
    "dhurandhar_2015",
    "Dhurandhar EJ, Kaiser KA, Dawson JA, et al. Predicting adult weight change in the real world: a systematic review "
    "and meta-analysis accounting for compensatory changes in energy intake or expenditure. Int J Obes 2015;39:1181-7 "
    "(abstract: 28 trials; 55-64 % less loss than expected with exercise)",
    "10.1038/ijo.2014.184",
)
