/**
 * A house of any number of rooms, one file each, over one yard and four details: what the speed figures are taken on.
 * Every room differs from its neighbors, and every file is as long as a real one gets (up to 200 lines).
 */
export interface MadeFile { readonly path: string; readonly text: string }

export function madeHouse(rooms: number): MadeFile[] {
    return [
        { path: '/house/yard.coffer', text: yard() },
        ...DETAILS.map((name, i) => ({ path: `/house/details/${name}.coffer`, text: detail(name, i) })),
        { path: '/house/rooms/house.coffer', text: 'edition 1\n\njob "Measured house" {\n  currency       "USD"\n  cut-to         1/32"\n  longest-board  16\'\n}\n' },
        ...Array.from({ length: rooms }, (_, i) => ({ path: `/house/rooms/room-${i + 1}.coffer`, text: room(i) })),
    ];
}

const DETAILS = ['deep-box', 'low-box', 'fine-box', 'broad-box'];
const BOARDS = ['1x2', '1x3', '1x4', '1x5', '1x6', '1x8', '1x10', '1x12'];

function yard(): string {
    return 'edition 1\n' + BOARDS.map((size, i) => `
/** ${size} as the yard sells it. */
stock board-${size} {
  size         ${size}
  species      yellow-poplar
  ripped-with  "fence ${String.fromCharCode(65 + i)}"
  lengths      8', 10', 12', 14', 16'
  price        ${(1.1 + i * 0.55).toFixed(2)} USD per ft
}
`).join('');
}

function detail(name: string, i: number): string {
    const [wide, deep] = [['1x6', '1x8'], ['1x4', '1x6'], ['1x5', '1x8'], ['1x8', '1x10']][i]!;
    const spacer = [5, 3.25, 5, 7][i]!;
    return `edition 1
from "../yard.coffer" use board-1x2, board-${wide}, board-${deep}

/** ${name}: a box beam with a drop-in bottom. */
profile ${name}(groove: Length = 1/4", wide: Stock = board-${wide}, deep: Stock = board-${deep}) {
  require groove <= 3/8" "leave at least half of a 3/4 side"

  blocking {
    stock   wide
    screws  #8 x 2 1/2" every 16"
  }
  spacers {
    stock   wide
    height  ${spacer}"
    every   24"
  }
  sides {
    stock      deep
    held-down  1/4"
    rabbet     groove x 1/4" on lower-back
    corners    mitered
    nails      16 ga x 2" every 12"
  }
  cleats {
    rip    3/4" x 3/4" from board-1x2
    nails  18 ga x 1 1/4" every 8"
  }
  bottom {
    stock     wide
    gap       0" to 1/32"
    ease      1/16"
    biscuits  1 x #10
  }
  trim { stock board-1x2 }
}
`;
}

function room(i: number): string {
    const detailName = DETAILS[i % DETAILS.length]!;
    const [across, down] = [3 + (i % 3), 2 + (i % 3)];
    const [width, length] = [156 + (i % 17) * 6, 120 + (i % 13) * 6];
    const feet = (inches: number): string => `${Math.floor(inches / 12)}' ${inches % 12}"`;
    // in the middle of a coffer, or a little beside it: clear of every beam
    const fixtures = Array.from({ length: 16 }, (_, k) => {
        const aside = 4 * Math.floor(k / (across * down));
        const x = Math.floor((k % across + 0.5) * width / across) + aside, y = Math.floor((Math.floor(k / across) % down + 0.5) * length / down) + aside;
        return `  fixture lamp-${k + 1} light at ${feet(x)}, ${feet(y)} diameter ${3 + k % 4}"`;
    }).join('\n');
    const readings = Array.from({ length: 40 }, (_, k) => `    point   ${feet((k % 8) * 18)}, ${feet(Math.floor(k / 8) * 24)} up 2 ${1 + k % 7}/8"`).join('\n');
    const comments = Array.from({ length: 30 }, (_, k) => `  // note ${k + 1} from the walk-through: look at the ${['north', 'east', 'south', 'west'][k % 4]} wall once more`).join('\n');
    return `edition 1
from "../yard.coffer" use board-1x10
from "../details/${detailName}.coffer" use ${detailName}

room room-${i + 1} "Room ${i + 1}" {
  wall north  ${feet(width)}
  wall east   ${feet(length)}
  wall south  ${feet(width)}
  wall west   ${feet(length)}

  ceiling {
    height    9'
    covering  gypsum thickness 5/8"
  }

  grid {
    coffers-north  ${across}
    coffers-east   ${down}
    beams          ${detailName}(groove: ${[1, 3, 2][i % 3]}/${[4, 16, 8][i % 3]}")
    through        ${i % 2 ? 'north-south' : 'east-west'}
    residue        spread
    perimeter {
      kind         band
      stock        board-1x10
      below-beams  1/4"
    }
  }

${comments}
${fixtures}

  survey {
    method  laser
${readings}
  }
}
`;
}
