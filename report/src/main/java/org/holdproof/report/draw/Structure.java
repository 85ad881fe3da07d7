package org.holdproof.report.draw;

import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfIndirectReference;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfStructureElement;
import com.lowagie.text.pdf.PdfStructureTreeRoot;
import com.lowagie.text.pdf.PdfWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a file's content is and in which order it is read, for a reader who does not see the page: a tree of tags
 * (ISO 32000-1, 14.7 and 14.8; ISO 14289-1). Parts are added in reading order before anything is drawn; what is drawn
 * for a part is marked on its page by {@link Pen#content}.
 */
public final class Structure {
    private final Part document = new Part(Tag.DOCUMENT, Optional.empty());

    /** The standard tags a report uses. */
    public enum Tag {
        DOCUMENT("Document"),
        SECTION("Sect"),
        TITLE("H1"),
        HEADING("H2"),
        SUBHEADING("H3"),
        PARAGRAPH("P"),
        LIST("L"),
        ITEM("LI"),
        ITEM_BODY("LBody"),
        TABLE("Table"),
        ROW("TR"),
        COLUMN_HEAD("TH"),
        ROW_HEAD("TH"),
        CELL("TD"),
        FIGURE("Figure");

        @SuppressWarnings("ImmutableEnumChecker") // a name is never changed once made
        private final PdfName mark;

        Tag(String mark) {
            this.mark = new PdfName(mark);
        }

        /** Whether an empty one is kept: a table's rows have as many cells as its heads. */
        private boolean staysEmpty() {
            return this == CELL || this == COLUMN_HEAD || this == ROW_HEAD;
        }
    }

    /** One part of the document. */
    public static final class Part {
        private final Tag tag;
        private final Optional<String> alternative;
        private final List<Part> parts = new ArrayList<>();
        private boolean drawn;
        private Optional<PdfStructureElement> element = Optional.empty();

        private Part(Tag tag, Optional<String> alternative) {
            this.tag = tag;
            this.alternative = alternative;
        }

        /** A part of this part, after those it has. */
        public Part add(Tag inner) {
            return keep(new Part(inner, Optional.empty()));
        }

        /** A picture, and what it shows in a sentence or two. */
        public Part addFigure(String words) {
            return keep(new Part(Tag.FIGURE, Optional.of(words)));
        }

        /** Says that something will be drawn for it: a part for which nothing is drawn is left out of the tree. */
        public void willBeDrawn() {
            drawn = true;
        }

        private Part keep(Part part) {
            parts.add(part);
            return part;
        }

        private boolean isEmpty() {
            return !drawn && !tag.staysEmpty() && parts.stream().allMatch(Part::isEmpty);
        }

        private void write(PdfStructureElement own) {
            element = Optional.of(own);
            alternative.ifPresent(words -> own.put(new PdfName("Alt"), new PdfString(words, PdfObject.TEXT_UNICODE)));
            if (tag == Tag.COLUMN_HEAD || tag == Tag.ROW_HEAD) {
                PdfDictionary attributes = new PdfDictionary();
                attributes.put(PdfName.O, new PdfName("Table"));
                attributes.put(new PdfName("Scope"), new PdfName(tag == Tag.COLUMN_HEAD ? "Column" : "Row"));
                own.put(PdfName.A, attributes);
            }
            for (Part part : parts) {
                if (!part.isEmpty()) {
                    part.write(new PdfStructureElement(own, part.tag.mark));
                }
            }
        }

        void begin(PdfContentByte page) {
            page.beginMarkedContentSequence(element.orElseThrow(
                    () -> new IllegalStateException("a part of the document that was not written before drawing")));
        }
    }

    /** The whole document; everything else is added to it. */
    public Part document() {
        return document;
    }

    /** Writes the tree; once, when every part is known and before anything is drawn. */
    public void write(PdfWriter writer) {
        writer.setTabs(PdfName.S);
        document.write(new PdfStructureElement(writer.getStructureTreeRoot(), Tag.DOCUMENT.mark));
    }

    /**
     * Takes an annotation on the present page into the tree, as a form's field.
     *
     * @return the number to be put into the annotation as its StructParent
     */
    public int field(PdfWriter writer, PdfIndirectReference annotation) {
        PdfStructureTreeRoot tree = writer.getStructureTreeRoot();
        PdfStructureElement form = new PdfStructureElement(document.element.orElseThrow(), new PdfName("Form"));
        PdfDictionary reference = new PdfDictionary(new PdfName("OBJR"));
        reference.put(new PdfName("Pg"), writer.getCurrentPage());
        reference.put(new PdfName("Obj"), annotation);
        form.put(PdfName.K, reference);
        return tree.addExistingObject(form.getReference());
    }
}
