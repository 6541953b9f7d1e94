package org.ebbwatch.paper;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.COSObjectable;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;

/** The tree of headings, paragraphs, tables and figures by which a screen reader goes through a document. */
final class Structure {
    private final PDDocument document;
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final List<List<PDStructureElement>> marked = new ArrayList<>();
    private PDStructureElement parent;

    Structure(PDDocument document) {
        this.document = document;
        document.getDocumentCatalog().setStructureTreeRoot(root);
        var mark = new PDMarkInfo();
        mark.setMarked(true);
        document.getDocumentCatalog().setMarkInfo(mark);
        parent = new PDStructureElement("Document", root);
        root.appendKid(parent);
    }

    void beginPage(PDPage page) {
        page.setStructParents(marked.size());
        marked.add(new ArrayList<>());
    }

    /** What follows belongs to a group of this type, until {@link #leave}. */
    void enter(String type) {
        var group = new PDStructureElement(type, parent);
        parent.appendKid(group);
        parent = group;
    }

    void leave() {
        parent = (PDStructureElement) parent.getParent();
    }

    /** An element on the newest page. */
    PDStructureElement element(String type, PDPage page) {
        var element = new PDStructureElement(type, parent);
        element.setPage(page);
        parent.appendKid(element);
        return element;
    }

    /** The number by which content of the newest page says that it belongs to this element. */
    int mark(PDStructureElement element) {
        List<PDStructureElement> page = marked.get(marked.size() - 1);
        page.add(element);
        element.appendKid(page.size() - 1);
        return page.size() - 1;
    }

    /** Writes down which content belongs to which element. */
    void finish() {
        Map<Integer, COSObjectable> pages = new HashMap<>();
        for (int page = 0; page < marked.size(); page++) {
            var elements = new COSArray();
            marked.get(page).forEach(element -> elements.add(element.getCOSObject()));
            pages.put(page, new PDParentTreeValue(elements));
        }
        var numbers = new PDNumberTreeNode(PDParentTreeValue.class);
        numbers.setNumbers(pages);
        root.setParentTree(numbers);
        root.setParentTreeNextKey(document.getNumberOfPages());
    }
}
