package org.holdproof.core.batch;

import java.util.OptionalDouble;

/**
 * What was cooked.
 *
 * @param name as it should be printed
 * @param species the animal
 * @param cut the cut, as it should be printed; may be empty
 * @param form what was done to it before the cook
 * @param fatPercent fat by weight, in percent
 * @param shape the solid it comes nearest to
 * @param thicknessMillimetres across the thinnest way through the middle
 * @param weightKilograms of one piece
 * @param nitritePpm ingoing sodium nitrite, in parts per million; empty or 0: uncured
 * @param brinePercent salt over salt and water, in percent
 */
public record Product(
        String name,
        Species species,
        String cut,
        Form form,
        OptionalDouble fatPercent,
        Shape shape,
        OptionalDouble thicknessMillimetres,
        OptionalDouble weightKilograms,
        OptionalDouble nitritePpm,
        OptionalDouble brinePercent) {

    /** The animals the published rules tell apart. */
    public enum Species {
        BEEF,
        VEAL,
        PORK,
        LAMB,
        GAME,
        CHICKEN,
        TURKEY,
        OTHER_POULTRY,
        FISH;

        public boolean isPoultry() {
            return this == CHICKEN || this == TURKEY || this == OTHER_POULTRY;
        }
    }

    /** What was done to the meat: whether its surface may have been carried inside. */
    public enum Form {
        INTACT,
        /** Injected, mechanically tenderised, rolled, tumbled. */
        NON_INTACT,
        /** Ground, minced, flaked, chopped. */
        COMMINUTED
    }

    /** The solid a piece comes nearest to. */
    public enum Shape {
        SLAB,
        CYLINDER,
        SPHERE,
        /** Between a cylinder and a slab, as most roasts are. */
        ROAST
    }
}
