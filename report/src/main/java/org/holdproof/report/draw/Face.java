package org.holdproof.report.draw;

/** A face of the report's type. */
public enum Face {
    REGULAR,
    BOLD,
    MONO
}
