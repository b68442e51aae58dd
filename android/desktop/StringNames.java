import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * The names of the strings, as Android's own build makes them: PACKAGE.R with R.string and R.plurals.
 * A name that is missing fails the compile on both platforms.
 *
 * java StringNames.java RES PACKAGE OUT
 */
class StringNames {
    public static void main(String[] words) throws Exception {
        var names = new TreeMap<String, TreeSet<String>>();
        names.put("string", new TreeSet<>());
        names.put("plurals", new TreeSet<>());
        var files = Objects.requireNonNull(new File(words[0], "values").listFiles((in, name) -> name.startsWith("strings")));
        for (File file : files) {
            var root = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(file).getDocumentElement();
            for (Node node = root.getFirstChild(); node != null; node = node.getNextSibling()) {
                if (node instanceof Element one && names.containsKey(one.getTagName())) {
                    var isNew = names.get(one.getTagName()).add(one.getAttribute("name"));
                    if (!isNew) throw new IllegalStateException(file + ": " + one.getAttribute("name") + " stands twice");
                }
            }
        }
        var out = new StringBuilder("package " + words[1] + "\n\nobject R {\n");
        out.append("    val FILES = listOf(");
        for (File file : files) out.append('"').append(file.getName()).append("\", ");
        out.append(")\n");
        int kind = 1;
        for (var of : names.entrySet()) {
            out.append("    object ").append(of.getKey()).append(" {\n");
            int number = 0;
            for (String name : of.getValue()) {
                out.append(String.format("        const val %s = 0x7f%02x%04x%n", name, kind, number++));
            }
            out.append("    }\n");
            kind++;
        }
        Path file = Path.of(words[2], words[1].replace('.', '/'), "R.kt");
        Files.createDirectories(file.getParent());
        Files.writeString(file, out.append("}\n").toString());
    }
}
