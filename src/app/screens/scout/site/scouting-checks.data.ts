/** What a scouting visit should bring home, in the order of the visit; common practice. */
export const SCOUTING_CHECKS = [
  'Where the car stands, and how long the walk takes with a loaded trolley',
  'Gates, steps and opening hours on the way in',
  'Camera mark and subject mark, photographed from above the camera',
  'Bearing of the frame, read twice',
  'Skyline traced from the camera mark, roofs and trees with it',
  'Sky read with the meter: bearing, tilt, minute and cloud written down',
  'A frame at the bearing, as metered, with its exposure',
  'Where stands go, how far they can move, what the ground holds',
  'Walls and ground to bounce from: colour and reflectance',
  'Wind at head height, and what shelters from it',
  'Power, or the place where batteries can be changed dry',
  'Foot traffic and vehicles at the hour of the shoot',
  'Edges, water, steps, loose stone; where nobody may step back',
  'Shelter, toilets, and where people change',
  'Whom to ask for permission, and what the rules on site say',
  'Phone signal, and the way an ambulance would come',
] as const;
