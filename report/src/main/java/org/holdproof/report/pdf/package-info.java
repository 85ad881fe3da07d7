/** The strict reader of PDF files that were written once and never added to; {@link PdfObjects} is its entry. */
@NullMarked
package org.holdproof.report.pdf;

import org.jspecify.annotations.NullMarked;
