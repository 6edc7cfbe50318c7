import { createRequire } from 'node:module';
import type Library from 'pptxgenjs';

/** The library's form for `import` is not marked as such, so that Node takes it for something else: it is required. */
const Writer: typeof Library.default = createRequire(import.meta.url)('pptxgenjs');

/** Writes slides (Office Open XML). */
export { Writer as SlideWriter };
export type SlideFile = Library.default;
export type Slide = Library.default.Slide;
export type SlideText = Library.default.TextProps;
export type SlideTextOptions = Library.default.TextPropsOptions;
export type SlideTableCell = Library.default.TableCell;
export type SlideBorder = Library.default.BorderProps;
