/** The stocks and the plain beam that rooms of tests are built of: 5 1/2" inside, sides of 3/4". Other beams are like it but for what they are for. */
export const PLAIN_BEAM = `edition 1

stock six { thickness 3/4"; width 5 1/2"; lengths 8', 12', 16' }
stock eight { thickness 3/4"; width 7 1/4"; lengths 8', 12', 16' }
stock ten { thickness 3/4"; width 9 1/4"; lengths 8', 12', 16' }
stock bed { thickness 9/16"; width 3 1/4"; lengths 16' }

profile plain {
  blocking { stock six; relief 0" }
  sides { stock eight }
  cleats { rip 3/4" x 3/4" from six }
  bottom { stock six }
}
profile capped like plain { bottom { stock ten; place under-sides overhang 1/2" } }
`;
