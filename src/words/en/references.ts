/** A work cited; `memory`: its details were not read again and have to be checked before they are printed. */
interface Reference {
  text: string;
  memory?: true;
}

/** Works that the methods paragraph cites, by key. */
export const references = {
  austin: {
    text: 'Austin PC. Balance diagnostics for comparing the distribution of baseline covariates between treatment groups in propensity-score matched samples. Stat Med 2009;28:3083–3107',
    memory: true,
  },
  brunner: {
    text: 'Brunner E, Munzel U. The nonparametric Behrens–Fisher problem: asymptotic theory and a small-sample approximation. Biom J 2000;42:17–25',
    memory: true,
  },
  clopper: {
    text: 'Clopper CJ, Pearson ES. The use of confidence or fiducial limits illustrated in the case of the binomial. Biometrika 1934;26:404–413',
    memory: true,
  },
  cribari: {
    text: 'Cribari-Neto F. Asymptotic inference under heteroskedasticity of unknown form. Comput Stat Data Anal 2004;45:215–233 (HC4)',
    memory: true,
  },
  fagerland: {
    text: 'Fagerland MW, Lydersen S, Laake P. The McNemar test for binary matched-pairs data: mid-p and asymptotic are better than exact conditional. BMC Med Res Methodol 2013;13:91',
    memory: true,
  },
  glynn: { text: 'Glynn RJ, Rosner B. Ophthalmic Epidemiol 2012;19:159–165 (correlated eyes)' },
  hastie: {
    text: 'Hastie T, Tibshirani R, Friedman J. The elements of statistical learning, section 5.2.1 (natural cubic splines). Springer',
    memory: true,
  },
  hodges: {
    text: 'Hodges JL, Lehmann EL. Estimates of location based on rank tests. Ann Math Stat 1963;34:598–611',
    memory: true,
  },
  holladay1997: { text: 'Holladay JT. J Refract Surg 1997;13:388–391 (averages of visual acuity)' },
  holladay1998: {
    text: 'Holladay JT, Dudeja DR, Koch DD. J Cataract Refract Surg 1998;24:57–65 (doubled-angle vectors)',
  },
  holladay2001: {
    text: 'Holladay JT, Moran JR, Kezirian GM. J Cataract Refract Surg 2001;27:61–79 (refractions at the corneal plane)',
  },
  holm: {
    text: 'Holm S. A simple sequentially rejective multiple test procedure. Scand J Stat 1979;6:65–70',
    memory: true,
  },
  hyndman: {
    text: 'Hyndman RJ, Fan Y. Sample quantiles in statistical packages. Am Stat 1996;50:361–365',
    memory: true,
  },
  johnson: {
    text: 'Johnson RA, Wichern DW. Applied multivariate statistical analysis, chapter 5 (Hotelling’s T²). Prentice Hall',
    memory: true,
  },
  krishnamoorthy: {
    text: 'Krishnamoorthy K, Yu J. Modified Nel and Van der Merwe test for the multivariate Behrens–Fisher problem. Stat Probab Lett 2004;66:161–169',
    memory: true,
  },
  langenbucher: { text: 'Langenbucher A et al. PLoS One 2022;17:e0267352 (sign of the prediction error)' },
  liang: {
    text: 'Liang KY, Zeger SL. Longitudinal data analysis using generalized linear models. Biometrika 1986;73:13–22',
    memory: true,
  },
  lydersen: {
    text: 'Lydersen S, Fagerland MW, Laake P. Recommended tests for association in 2 × 2 tables. Stat Med 2009;28:1159–1175',
    memory: true,
  },
  newcombe: { text: 'Newcombe RG. Stat Med 1998;17:857–872 (intervals of a single share)' },
  newcombeUnpaired: { text: 'Newcombe RG. Stat Med 1998;17:873–890 (difference of two independent shares)' },
  newcombePaired: {
    text: 'Newcombe RG. Improved confidence intervals for the difference between binomial proportions based on paired data. Stat Med 1998;17:2635–2650',
    memory: true,
  },
  pitman: {
    text: 'Pitman EJG. A note on normal correlation. Biometrika 1939;31:9–12; Morgan WA. A test for the significance of the difference between the two variances in a sample from a normal bivariate population. Biometrika 1939;31:13–19',
    memory: true,
  },
  satterthwaite: {
    text: 'Satterthwaite FE. An approximate distribution of estimates of variance components. Biometrics 1946;2:110–114',
    memory: true,
  },
  wang: { text: 'Wang L, Koch DD, Hill W, Abulafia A. J Cataract Refract Surg 2017;43:999–1002 (centred errors)' },
  wilson: {
    text: 'Wilson EB. Probable inference, the law of succession, and statistical inference. J Am Stat Assoc 1927;22:209–212',
    memory: true,
  },
  ying: { text: 'Ying GS et al. Ophthalmic Epidemiol 2017;24:130–140 (linear regression of correlated eyes)' },
} as const satisfies Readonly<Record<string, Reference>>;

export type ReferenceKey = keyof typeof references;
