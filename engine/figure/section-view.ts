// What a drawing of a joint needs to know, as plain data: the library computes it (stdlib/drawings.joint.md), the drawing adds
// nothing. Every name here is the name of a record and its fields there; a test holds both together.

/**
 * A section through the screw axis. Lengths are in metres, angles in radians, forces in newtons, shares as numbers.
 * Depths count from the loaded face, the face of the printed part that the attached plate rests on, into the part.
 */
export interface SectionView {
  readonly record: "SectionView";
  readonly screw: DrawnScrew;
  /** Under the head. */
  readonly washer: DrawnWasher | undefined;
  /** From the head to the loaded face. */
  readonly plates: readonly DrawnPlate[];
  readonly part: DrawnPart;
  readonly anchor: DrawnAnchor;
  readonly fibre: DrawnFibre | undefined;
  /** Force that pulls the head away from the part; undefined when there is none to show. */
  readonly load: number | undefined;
  readonly failure: FailureMark | undefined;
}

export interface DrawnScrew {
  readonly record: "DrawnScrew";
  readonly designation: string;
  readonly grade: string;
  /** Major diameter, pitch and root diameter of the thread. */
  readonly d: number;
  readonly P: number;
  readonly core: number;
  /** "hexagon", "socket", "button", "countersunk" or "flange"; other words are drawn as a plain cylinder. */
  readonly head: string;
  /** Circle that holds the head, its height, the size of its key. */
  readonly d_k: number;
  readonly k: number;
  readonly s: number;
  /** Under the head, or over all for a countersunk one. */
  readonly length: number;
  /** Plain length under the head. */
  readonly shank: number;
}

export interface DrawnWasher {
  readonly record: "DrawnWasher";
  readonly outside: number;
  readonly inside: number;
  readonly h: number;
  readonly name: string;
}

export interface DrawnPlate {
  readonly record: "DrawnPlate";
  readonly t: number;
  /** Diameter of its clearance hole. */
  readonly hole: number;
  readonly made: "metal" | "printed";
  readonly name: string;
}

export interface DrawnPart {
  readonly record: "DrawnPart";
  readonly name: string;
  /** Along the screw; undefined: not known, the section goes on. */
  readonly t: number | undefined;
  /** Screw axis to the nearest free edge. */
  readonly edge: number | undefined;
  /** Outer diameter of a boss. */
  readonly boss: number | undefined;
  readonly walls: number;
  readonly bead: number;
  readonly layer: number;
  readonly top_layers: number;
  readonly bottom_layers: number;
  /** Share that is filled, 1 for solid. */
  readonly infill: number;
  readonly pattern: string;
  /** Between the screw axis and the build direction, 0 to pi/2. */
  readonly screw_to_build: number;
  /** How the roof of a lying hole was printed: "none", "bridged" or "supported". */
  readonly bridge: string;
}

export type DrawnAnchor = DrawnInsert | DrawnThread | DrawnNut | DrawnWire;

/** A threaded metal insert in its hole: installed with heat, pressed or bonded. */
export interface DrawnInsert {
  readonly record: "DrawnInsert";
  readonly name: string;
  /** Of the hole before the insert came. */
  readonly hole: number;
  /** Depth of the hole from the face that the insert was installed from; undefined: through. */
  readonly bottom: number | undefined;
  readonly D: number;
  readonly L: number;
  readonly from: "loaded face" | "back";
  /** Diameter at the bottom of the groove between its knurl bands. */
  readonly groove: number | undefined;
  readonly flange: number | undefined;
  readonly knurl: "bands with groove" | "plain bands" | "straight" | "none";
  /** Half-angle of a tapered body. */
  readonly taper: number;
  /** By how much it stands proud of its face; negative when sunk. */
  readonly protrusion: number;
  readonly bonded: boolean;
}

/** A thread in the plastic itself. */
export interface DrawnThread {
  readonly record: "DrawnThread";
  readonly how: "self-cut" | "formed" | "tapped" | "printed";
  /** Before the thread, and how deep it goes; undefined: through. */
  readonly hole: number;
  readonly bottom: number | undefined;
  /** Engagement. */
  readonly L: number;
}

/** A nut: in a pocket, flush in the far face, or on the far face. */
export interface DrawnNut {
  readonly record: "DrawnNut";
  readonly name: string;
  readonly place: "pocket" | "flush" | "far face";
  readonly shape: "hexagon" | "square";
  readonly s: number;
  readonly m: number;
  /** Width across flats of the pocket; not used on the far face. */
  readonly pocket: number;
  /** Plastic between pocket and loaded face; not used otherwise. */
  readonly over: number;
  readonly opening: "side slot" | "paused print" | "far face";
  /** How the face that the nut bears on was printed. */
  readonly ceiling: string;
  /** Of the clearance hole through the plastic. */
  readonly hole: number;
  /** Depth of that hole; undefined: through. */
  readonly bottom: number | undefined;
  readonly washer: DrawnWasher | undefined;
  readonly sleeve: DrawnSleeve | undefined;
}

export interface DrawnSleeve {
  readonly record: "DrawnSleeve";
  readonly name: string;
  readonly D: number;
  readonly d: number;
  readonly L: number;
}

/** A coil of wire in a tapped hole. */
export interface DrawnWire {
  readonly record: "DrawnWire";
  /** Drilled, and the major diameter of the larger thread that was tapped. */
  readonly hole: number;
  readonly major: number;
  readonly L: number;
  readonly bottom: number | undefined;
}

export interface DrawnFibre {
  readonly record: "DrawnFibre";
  readonly name: string;
  /** Inner radius of the rings, turns in one layer, layers with rings. */
  readonly r: number;
  readonly turns: number;
  readonly rings: number;
  /** Width of one strand. */
  readonly strand: number;
  /** Between which depths the rings lie. */
  readonly from: number;
  readonly to: number;
  readonly plies: number;
  readonly ply: number;
  /** Depth of the first ply. */
  readonly plies_from: number;
}

/** Where the part is predicted to fail first. */
export interface FailureMark {
  readonly record: "FailureMark";
  /** "cylinder", "plug", "cone", "face", "layer", "screw" or "split". */
  readonly surface: string;
  readonly r: number;
  readonly from: number;
  readonly to: number;
  readonly text: string;
}
