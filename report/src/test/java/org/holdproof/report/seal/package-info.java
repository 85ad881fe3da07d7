/** Tests of the seal, with independent tools: veraPDF, the EU's DSS, PDFBox, poppler and qpdf. */
@NullMarked
package org.holdproof.report.seal;

import org.jspecify.annotations.NullMarked;
