/** Steps, formulas and outside values of approach and call distance, needless openings and air, in German; `worked.ts` asks here too. */
export const ofApproach: Readonly<Record<string, string>> = {
  'stopping times read': 'abgelesene Anhaltezeiten',
  'mean of the readings': 'Mittel der Ablesungen',
  'standard deviation of the readings': 'Standardabweichung der Ablesungen',
  'sqrt(sum (reading - mean)^2 / (n - 1))': 'Wurzel(Summe (Ablesung - Mittel)^2 / (n - 1))',
  'share of all stops, in percent': 'Anteil aller Halte, in Prozent',
  'confidence, in percent': 'Vertrauen, in Prozent',
  'tolerance factor': 'Toleranzfaktor',
  'quantile of the noncentral t distribution / sqrt(n)': 'Quantil der nichtzentralen t-Verteilung / Wurzel(n)',
  'time from the stop command to rest': 'Zeit vom Haltbefehl bis zum Stillstand',
  'mean + factor * deviation, at least the largest reading': 'Mittel + Faktor * Abweichung, mindestens die größte Ablesung',
  'last reading of the stopping curve': 'letzte Ablesung der Anhaltekurve',
  'fastest closing': 'schnellstes Schließen',
  'delay of the control + fastest closing / braking': 'Verzögerung der Steuerung + schnellstes Schließen / Bremsen',
  'response of the output': 'Ansprechzeit des Ausgangs',
  'time until the leaf rests, T': 'Zeit bis zum Stillstand des Flügels, T',
  'response + stop': 'Ansprechen + Anhalten',
  'speed of approach, K': 'Annäherungsgeschwindigkeit, K',
  'addend, C or D_DS': 'Zuschlag, C oder D_DS',
  'supplement, Z': 'Zuschlag, Z',
  'lowest height of a lying zone': 'kleinste Höhe eines liegenden Bereichs',
  '15 (d - 50), from 0 to 1000': '15 (d - 50), von 0 bis 1000',
  'separation distance, S': 'Sicherheitsabstand, S',
  'K T + addend + supplement': 'K T + Zuschlag + Zuschlag Z',
  'found before the leaf': 'gefunden vor dem Flügel',
  'distance left over': 'übriger Abstand',
  'found - S': 'gefunden - S',
  'pace of the vehicle': 'Tempo des Fahrzeugs',
  'way of the leaf until clear': 'Weg des Flügels, bis frei ist',
  'way of the whole opening': 'Weg der ganzen Öffnung',
  'delay before a shut leaf opens': 'Verzögerung, bevor ein geschlossener Flügel öffnet',
  'wait until the leaf opens': 'Warten, bis der Flügel öffnet',
  'max(delay, stop + rest of a leaf about to shut)': 'max(Verzögerung, Anhalten + Ruhe eines fast geschlossenen Flügels)',
  'from the control until clear': 'von der Steuerung bis frei',
  'call distance': 'Anforderungsabstand',
  'pace * (response + from the control until clear)': 'Tempo * (Ansprechen + von der Steuerung bis frei)',
  'called before the leaf': 'angefordert vor dem Flügel',
  'reaction time': 'Reaktionszeit',
  'deceleration on the level, in m/s2': 'Bremsverzögerung in der Ebene, in m/s2',
  'fall of the way toward the leaf': 'Gefälle des Weges zum Flügel hin',
  'stopping distance': 'Anhalteweg',
  'v * reaction + v^2 / (2 (deceleration - g * fall))': 'v * Reaktion + v^2 / (2 (Bremsverzögerung - g * Gefälle))',
  'way until it stands': 'Weg, bis es steht',
  'v (response + delay) + stopping distance': 'v (Ansprechen + Verzögerung) + Anhalteweg',
  'Deceleration as entered for this lane, in m/s2.': 'Bremsverzögerung, wie für diese Spur eingegeben, in m/s2.',
  'a vehicle that called finds the opening clear without braking':
    'ein Fahrzeug, das angefordert hat, findet die Öffnung frei, ohne zu bremsen',
  'the stopping distance of road handbooks, from where the leaf ought to have begun to open':
    'der Anhalteweg der Straßenhandbücher, ab wo der Flügel zu öffnen begonnen haben sollte',
  'seen in a published summary; that it is asked where the concept is contact-free is our decision':
    'gesehen in einer veröffentlichten Zusammenfassung; dass es bei berührungslosem Schutzkonzept verlangt wird, ist unsere Festlegung',
  'seen in a published summary, not in the standard itself': 'gesehen in einer veröffentlichten Zusammenfassung, nicht in der Norm selbst',
  'Speed K at which people are taken to come toward a detection zone that lies along their way.':
    'Geschwindigkeit K, mit der Personen einem Erfassungsbereich nahen, der entlang ihres Weges liegt.',
  'Addend C of a lying detection zone at the height H: 1200 - 0.4 H, not below 850.':
    'Zuschlag C eines liegenden Erfassungsbereichs in der Höhe H: 1200 - 0,4 H, mindestens 850.',
  'Addend D_DS of a lying detection zone, whatever its height.':
    'Zuschlag D_DS eines liegenden Erfassungsbereichs, gleich in welcher Höhe.',
  'Lowest height H of a lying detection zone whose detection capability is d: 15 (d - 50), from 0 to 1000.':
    'Kleinste Höhe H eines liegenden Erfassungsbereichs mit dem Detektionsvermögen d: 15 (d - 50), von 0 bis 1000.',
  'Speeds K of an arm: the first, or where the distance then exceeds 500 mm the second.':
    'Geschwindigkeiten K eines Arms: die erste, oder wo der Abstand damit 500 mm übersteigt, die zweite.',
  'Least distance of a standing detection zone at the first and at the second speed of an arm.':
    'Kleinster Abstand eines stehenden Erfassungsbereichs bei der ersten und bei der zweiten Geschwindigkeit eines Arms.',
  'Addend C of a standing detection zone whose detection capability d is at most 40 mm: 8 (d - 14), not below 0.':
    'Zuschlag C eines stehenden Erfassungsbereichs mit einem Detektionsvermögen d bis 40 mm: 8 (d - 14), mindestens 0.',
  'Addend C of a standing detection zone whose detection capability is above 40 and at most 70 mm.':
    'Zuschlag C eines stehenden Erfassungsbereichs mit einem Detektionsvermögen über 40 bis 70 mm.',
  'Addend C of a single beam 750 mm above the floor.': 'Zuschlag C eines einzelnen Strahls 750 mm über dem Boden.',
  'Addend as entered for this field.': 'Zuschlag, wie für dieses Feld eingegeben.',
  'Supplement as entered for this field.': 'Zuschlag Z, wie für dieses Feld eingegeben.',
}
