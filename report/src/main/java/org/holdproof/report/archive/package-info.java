/** Archival PDF files with their sources attached; {@link ArchivalPdf} is the entry. */
@NullMarked
package org.holdproof.report.archive;

import org.jspecify.annotations.NullMarked;
