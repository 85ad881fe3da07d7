package org.holdproof.core.batch;

import java.util.OptionalDouble;

/**
 * What was cooked.
 *
 * @param name as it should be printed
 * @param species the animal or other food
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

    /** @throws IllegalArgumentException if a figure is not finite, is negative, or is a thickness of nothing */
    public Product {
        requireFigure("fat", fatPercent);
        requireFigure("thickness", thicknessMillimetres);
        requireFigure("weight", weightKilograms);
        requireFigure("nitrite", nitritePpm);
        requireFigure("brine", brinePercent);
        if (thicknessMillimetres.isPresent() && thicknessMillimetres.getAsDouble() == 0) {
            throw new IllegalArgumentException("a thickness of nothing");
        }
    }

    private static void requireFigure(String name, OptionalDouble figure) {
        if (figure.isPresent() && !(Double.isFinite(figure.getAsDouble()) && figure.getAsDouble() >= 0)) {
            throw new IllegalArgumentException(name + " " + figure.getAsDouble());
        }
    }

    /** The animals and other foods the published rules tell apart. */
    public enum Species {
        BEEF("beef"),
        VEAL("veal"),
        PORK("pork"),
        LAMB("lamb"),
        /** Wild game. */
        GAME("game"),
        /** Game raised for food. */
        FARMED_GAME("farmed game"),
        CHICKEN("chicken"),
        TURKEY("turkey"),
        OTHER_POULTRY("other poultry"),
        FISH("fish"),
        SHELLFISH("shellfish"),
        EGG_DISH("egg dish"),
        PLANT_FOOD("plant food");

        private final String title;

        Species(String title) {
            this.title = title;
        }

        /** The food's name as it is written in a batch record and printed. */
        public String title() {
            return title;
        }

        public boolean isRedMeat() {
            return this == BEEF || this == VEAL || this == PORK || this == LAMB;
        }

        public boolean isPoultry() {
            return this == CHICKEN || this == TURKEY || this == OTHER_POULTRY;
        }
    }

    /** What was done to the meat: whether its surface may have been carried inside. */
    public enum Form {
        INTACT("intact"),
        /** Injected, mechanically tenderised, rolled, tumbled. */
        NON_INTACT("non-intact"),
        /** Ground, minced, flaked, chopped. */
        COMMINUTED("comminuted"),
        /** Comminuted and shaped: hamburgers. */
        PATTIES("patties"),
        /** Filled with a stuffing. */
        STUFFED("stuffed");

        private final String title;

        Form(String title) {
            this.title = title;
        }

        /** The form's name as it is written in a batch record and printed. */
        public String title() {
            return title;
        }
    }

    /** The solid a piece comes nearest to. */
    public enum Shape {
        SLAB("slab"),
        CYLINDER("cylinder"),
        SPHERE("sphere"),
        /** Between a cylinder and a slab, as most roasts are. */
        ROAST("roast");

        private final String title;

        Shape(String title) {
            this.title = title;
        }

        /** The shape's name as it is written in a batch record and printed. */
        public String title() {
            return title;
        }
    }
}
