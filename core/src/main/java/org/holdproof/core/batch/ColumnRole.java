package org.holdproof.core.batch;

/** What a column of a log measured. */
public enum ColumnRole {
    /** A probe in the food. */
    CORE("core"),
    /** A probe in the water. */
    BATH("bath"),
    /** A probe in the air of a smoker, oven, chiller or store. */
    AIR("air"),
    /** A probe on the food's surface. */
    SURFACE("surface");

    private final String title;

    ColumnRole(String title) {
        this.title = title;
    }

    /** The role's name as it is written in a batch record and printed. */
    public String title() {
        return title;
    }
}
