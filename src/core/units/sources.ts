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
  rfc5870:
    'A. Mayrhofer, C. Spanring, RFC 5870: A Uniform Resource Identifier for Geographic Locations, IETF, 2010.',
  rfc7946:
    'H. Butler, M. Daly, A. Doyle, S. Gillies, S. Hagen, T. Schaub, RFC 7946: The GeoJSON Format, IETF, 2016.',
  openLocationCode:
    'D. Rinckes, P. Bunge, Open Location Code Specification, 2014, with its test data.',
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
  iso1230: 'ISO 1230:2007, Photography: Determination of flash guide numbers.',
  iataDgr:
    'IATA, Dangerous Goods Regulations, table 2.3.A: Provisions for dangerous goods carried by passengers or crew (lithium batteries by watt-hours).',
  bohannon1997:
    'R. W. Bohannon, Comfortable and maximum walking speed of adults aged 20–79 years, Age and Ageing 26 (1997) 15–19.',
  iso2827:
    'ISO 2827:1988, Photography: Electronic flash equipment: Determination of light output and performance.',
  iso517:
    'ISO 517:2008, Photography: Apertures and related properties pertaining to photographic lenses: Designations and measurements.',
  iso516:
    'ISO 516:2019, Camera shutters: Timing: General definition and mechanical shutter measurements.',
  iso12232:
    'ISO 12232:2019, Photography: Digital still cameras: Determination of exposure index, ISO speed ratings, standard output sensitivity, and recommended exposure index.',
  iso5: 'ISO 5-1:2009, Photography and graphic technology: Density measurements, part 1: Geometry and functional notation (optical density is the logarithm of the reciprocal of transmittance).',
  exif232:
    'CIPA DC-008-2019 / JEITA CP-3451E, Exchangeable image file format for digital still cameras: Exif version 2.32.',
  apex1961:
    'ASA PH2.12-1961, American Standard General-Purpose Photographic Exposure Meters (photoelectric type), additive system of photographic exposure.',
  iesHandbook:
    'M. S. Rea (ed.), IESNA Lighting Handbook, 9th ed., Illuminating Engineering Society of North America, 2000, ch. 9: illuminance from a disc source and the five-times rule.',
  ray2002: 'S. F. Ray, Applied Photographic Optics, 3rd ed., Focal Press, 2002.',
  lightingPractice:
    'Common practice of location lighting: figures in general use without a single published measurement.',
  practitionerPages:
    'Figures published by practitioners and in equipment manuals, collected and recomputed; a single one is often a stop off.',
  iso15469:
    'ISO 15469:2004 (CIE S 011/E:2003), Spatial distribution of daylight: CIE standard general sky.',
  darulaKittler2002:
    'S. Darula, R. Kittler, CIE general sky standard defining luminance distributions, Proc. eSim 2002, Montréal.',
  schaefer1998:
    'B. E. Schaefer, To the visual limits, Sky & Telescope 95 (May 1998) 57, with the listing published beside it.',
  cie15: 'CIE 15:2018, Colorimetry, 4th ed., Commission Internationale de l’Éclairage.',
  kim2002:
    'Y.-S. Kim, B.-H. Cho, B.-S. Kang, D.-I. Hong, Color temperature conversion system and method using the same, US patent 7024034, 2006 (filed 2002).',
  preetham1999:
    'A. J. Preetham, P. Shirley, B. Smits, A practical analytic model for daylight, Proc. SIGGRAPH 1999, 91–100.',
  windLoads:
    'EN 1991-1-4:2005, Eurocode 1: Actions on structures, part 1-4: Wind actions: velocity pressure and force coefficients.',
  bradford1985:
    'K. M. Lam, Metamerism and Colour Constancy, PhD thesis, University of Bradford, 1985.',
  iec61966:
    'IEC 61966-2-1:1999, Multimedia systems and equipment: Colour measurement and management, part 2-1: Default RGB colour space sRGB.',
  heisler1986:
    'G. M. Heisler, Effects of individual trees on the solar radiation climate of small buildings, Urban Ecology 9 (1986) 337–359.',
  wgs84:
    'NGA.STND.0036_1.0.0_WGS84, Department of Defense World Geodetic System 1984: its definition and relationships with local geodetic systems (2014).',
  deviceOrientation:
    'W3C, DeviceOrientation Event Specification, Candidate Recommendation, 18 August 2016: section 4.1 for the frames and angles, section 5.1 for worked examples.',
  torgeMueller2012:
    'W. Torge, J. Müller, Geodesy, 4th ed., de Gruyter, 2012: trigonometric heights, coefficient of refraction.',
  franklinRay1994:
    'W. R. Franklin, C. K. Ray, Higher isn’t necessarily better: visibility algorithms and experiments, Proc. 6th Int. Symp. on Spatial Data Handling, Edinburgh, 1994, 751–770.',
  iogpFormulas:
    'IOGP Publication 373-7-2, Coordinate Conversions and Transformations including Formulas: Popular Visualisation Pseudo-Mercator.',
  heldKarp1962:
    'M. Held, R. M. Karp, A dynamic programming approach to sequencing problems, J. SIAM 10 (1962) 196–210. doi:10.1137/0110015',
  schrimpf2000:
    'G. Schrimpf, J. Schneider, H. Stamm-Wilbrandt, G. Dueck, Record breaking optimization results using the ruin and recreate principle, J. Comput. Phys. 159 (2000) 139–171. doi:10.1006/jcph.1999.6413',
  numericalRecipes1992:
    'W. H. Press, S. A. Teukolsky, W. T. Vetterling, B. P. Flannery, Numerical Recipes in C, 2nd ed., Cambridge University Press, 1992, section 7.1.',
  roofTuebingen:
    'LightLogR project (MIT licence), example data: one-minute horizontal illuminance on a roof, Tübingen, 28 August to 4 September 2023.',
} as const satisfies Record<string, string>;
