/**
 * What is known of a part as it stands in a build: z is up, the platform is at z = 0. Lengths are mm, areas mm2,
 * volumes mm3.
 */
export interface PartShape {
  /** Bounding box along x, y and z. */
  readonly width: number;
  readonly depth: number;
  readonly height: number;
  /** Volume of the solid. */
  readonly volume: number;
  readonly surface: number;
  /** Area that the part projects on the platform. */
  readonly footprint: number;
  /** Area of faces that look down more steeply than the overhang angle allows; what lies on the platform is left out. */
  readonly overhangArea: number;
  /** Volume between overhangs and what is below them. */
  readonly supportedVolume: number;
  /** Area on which supports touch the part. */
  readonly supportContactArea: number;
  /**
   * Mean cross-section areas of equally thick slabs, from the bottom to the top: they add up to the volume; empty when no mesh is
   * known, then the volume is taken as spread evenly over the height.
   */
  readonly layerAreas: readonly number[];
}
