/**
 * The words that differ. Page texts that hold one of them stand here, under their keys, with both;
 * all others have one text for every site. The site's own texts (hospital, places, equipment,
 * procedures, names of drugs on its approved list, what somebody types) are never changed.
 */

/** A text of the pages in both. */
export interface Both {
  readonly british: string;
  readonly american: string;
}

export const BOTH = {
  // Whoever gives the anaesthetic in the room, nurse or physician. The American word for the
  // physician alone would be wrong for the most of them, and who supervises has a role of its own.
  'role.anaesthetist': { british: 'anaesthetist', american: 'anesthetist' },
  'role.porter': { british: 'porter', american: 'transporter' },
  'step.release': { british: 'anaesthesia release', american: 'anesthesia release' },
  'reason.anaesthesia': { british: 'anaesthesia', american: 'anesthesia' },
  'drugs.labelled': { british: 'drawn and labelled', american: 'drawn and labeled' },
  'record.not': { british: 'Not the anaesthetic record.', american: 'Not the anesthesia record.' },
} as const satisfies Readonly<Record<string, Both>>;

export type BothKey = keyof typeof BOTH;

export const BOTH_KEYS: ReadonlySet<string> = new Set(Object.keys(BOTH));

/**
 * Whole words of the server's own sentences and of sheets, British and American. The server writes
 * all of them in British, once for all screens; pages turn them as they take them.
 */
export const PAIRS: readonly (readonly [string, string])[] = [
  ['anaesthesia', 'anesthesia'],
  ['anaesthetic', 'anesthetic'],
  ['anaesthetics', 'anesthetics'],
  ['anaesthetise', 'anesthetize'],
  ['anaesthetised', 'anesthetized'],
  ['anaesthetist', 'anesthetist'],
  ['anaesthetists', 'anesthetists'],
  ['anaemia', 'anemia'],
  ['adrenaline', 'epinephrine'],
  ['noradrenaline', 'norepinephrine'],
  ['suxamethonium', 'succinylcholine'],
  ['paracetamol', 'acetaminophen'],
  ['salbutamol', 'albuterol'],
  ['analyser', 'analyzer'],
  ['catheterise', 'catheterize'],
  ['catheterised', 'catheterized'],
  ['centre', 'center'],
  ['centimetre', 'centimeter'],
  ['centimetres', 'centimeters'],
  ['colour', 'color'],
  ['colours', 'colors'],
  ['coloured', 'colored'],
  ['diathermy', 'electrosurgery'],
  ['fibre', 'fiber'],
  ['fibreoptic', 'fiberoptic'],
  ['foetal', 'fetal'],
  ['grey', 'gray'],
  ['gynaecology', 'gynecology'],
  ['haematology', 'hematology'],
  ['haemoglobin', 'hemoglobin'],
  ['haemorrhage', 'hemorrhage'],
  ['hypovolaemia', 'hypovolemia'],
  ['ischaemia', 'ischemia'],
  ['labelled', 'labeled'],
  ['labour', 'labor'],
  ['litre', 'liter'],
  ['litres', 'liters'],
  ['manoeuvre', 'maneuver'],
  ['metre', 'meter'],
  ['metres', 'meters'],
  ['millilitre', 'milliliter'],
  ['millilitres', 'milliliters'],
  ['mould', 'mold'],
  ['oedema', 'edema'],
  ['oesophageal', 'esophageal'],
  ['oesophagus', 'esophagus'],
  ['orthopaedic', 'orthopedic'],
  ['orthopaedics', 'orthopedics'],
  ['paediatric', 'pediatric'],
  ['paediatrics', 'pediatrics'],
  ['porter', 'transporter'],
  ['porters', 'transporters'],
  ['programme', 'program'],
  ['sterilise', 'sterilize'],
  ['sterilised', 'sterilized'],
  ['swab', 'sponge'],
  ['swabs', 'sponges'],
  ['theatre', 'operating room'],
  ['theatres', 'operating rooms'],
  ['trolley', 'cart'],
  ['tumour', 'tumor'],
  ['vaporiser', 'vaporizer'],
  ['vaporisers', 'vaporizers'],
  ['vapour', 'vapor'],
];
