/**
 * The bibliography. A comment in core cites an entry as [key]; a test demands that every
 * cited key is here and that every entry is cited.
 */
export const SOURCES = {
  iso2720:
    'ISO 2720:1974, Photography: General purpose photographic exposure meters (photoelectric type), guide to product specification.',
  meeus1998: 'J. Meeus, Astronomical Algorithms, 2nd ed., Willmann-Bell, 1998.',
  saemundsson1986:
    'Þ. Sæmundsson, Astronomical refraction, Sky & Telescope 72 (1986) 70, as given in Meeus, Astronomical Algorithms, ch. 16.',
  usnoRiseSet:
    'US Naval Observatory, Rise, Set, and Twilight Definitions: upper limb on a level horizon, refraction 34′, sun radius 16′; twilights at −6°, −12°, −18°.',
  karney2013:
    'C. F. F. Karney, Algorithms for geodesics, J. Geodesy 87 (2013) 43. doi:10.1007/s00190-012-0578-z',
  rfc5870: 'A. Mayrhofer, C. Spanring, RFC 5870: A Uniform Resource Identifier for Geographic Locations, IETF, 2010.',
  explanatorySupplement1992:
    'P. K. Seidelmann (ed.), Explanatory Supplement to the Astronomical Almanac, University Science Books, 1992, ch. 9, pp. 490–493.',
  rp21: 'IES Calculation Procedures Committee, Recommended Practice for the Calculation of Daylight Availability (RP-21), J. Illum. Eng. Soc. 13 (1984) 381–392.',
  kastenYoung1989:
    'F. Kasten, A. T. Young, Revised optical air mass tables and approximation formula, Appl. Opt. 28 (1989) 4735–4738.',
  iso2533: 'ISO 2533:1975, Standard Atmosphere.',
  ineichenPerez2002:
    'P. Ineichen, R. Perez, A new airmass independent formulation for the Linke turbidity coefficient, Solar Energy 73 (2002) 151–157.',
  littlefair1988:
    'P. J. Littlefair, Measurements of the luminous efficacy of daylight, Light. Res. Technol. 20 (1988) 177–188.',
  kastenCzeplak1980:
    'F. Kasten, G. Czeplak, Solar and terrestrial radiation dependent on the amount and type of cloud, Solar Energy 24 (1980) 177–189.',
  perez1990:
    'R. Perez, P. Ineichen, R. Seals, J. Michalsky, R. Stewart, Modeling daylight availability and irradiance components from direct and global irradiance, Solar Energy 44 (1990) 271–289.',
  rayleighScattering:
    'Lord Rayleigh, On the light from the sky, its polarization and colour, Philosophical Magazine 41 (1871) 107-120, 274-279. doi:10.1080/14786447108640452',
} as const satisfies Record<string, string>;

export type SourceKey = keyof typeof SOURCES;
