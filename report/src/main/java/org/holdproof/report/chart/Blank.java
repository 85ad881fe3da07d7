package org.holdproof.report.chart;

/** A part of the record without readings. */
public record Blank(long fromMillis, long toMillis) {}
