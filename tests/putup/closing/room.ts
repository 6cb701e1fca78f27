/** Four coffers by three of a beam of 1x6, a band round the walls: 218 1/2" by 180 1/2" inside. `bottom`: more words of its bottom; `more`: of the room. */
interface Words {
    readonly north?: string; readonly coffers?: number; readonly species?: string; readonly through?: string; readonly lengths?: string;
    readonly biscuits?: string; readonly bottom?: string; readonly perimeter?: string; readonly more?: string;
}

export function roomText({
    north = `18' 4"`, coffers = 4, species = '', through = 'north-south', lengths = `8', 12', 16', 20', 24'`, biscuits = '2 x #10', bottom = '',
    perimeter = 'kind band; stock board-8', more = '',
}: Words = {}): string {
    return `edition 1

stock board-6 { ${species}thickness 3/4"; width 5 1/2"; lengths ${lengths} }
stock board-8 { thickness 3/4"; width 7 1/4"; lengths 8', 12', 16', 20', 24' }
stock strip { thickness 3/4"; width 1 1/2"; lengths 16' }
profile box {
  blocking { stock board-6 }
  sides { stock board-8 }
  cleats { rip 3/4" x 3/4" from board-6 }
  bottom { stock board-6${biscuits === '' ? '' : `; biscuits ${biscuits}`}${bottom} }
  trim { stock strip }
}
room den {
  wall north ${north}
  wall east 15' 2"
  grid {
    coffers-north ${coffers}
    coffers-east 3
    beams box
    through ${through}
    perimeter { ${perimeter} }
  }
${more}}
`;
}
