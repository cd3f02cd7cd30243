using System.Globalization;
using System.Security;
using System.Text;
using Throwright.Formats.Drawing;
using Throwright.Formats.ThreeMf;

namespace Throwright.Formats.Tables;

/// <summary>Writes one sheet of texts as Office Open XML (ECMA-376): the same rows give the same bytes.</summary>
/// <remarks>Every cell is a text, so nothing in it runs as a formula. The first row is bold and stays in view.</remarks>
public static class XlsxWriter
{
    private const string Main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
    private const string Relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
    private const string Head = "<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>";

    public static byte[] Write(string sheet, IReadOnlyList<IReadOnlyList<string>> rows)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(rows);
        return ZipWriter.Pack(
        [
            Part("[Content_Types].xml", "<Types xmlns=\"http://schemas.openxmlformats.org/package/2006/content-types\"><Default Extension=\"rels\" ContentType=\"application/vnd.openxmlformats-package.relationships+xml\"/><Default Extension=\"xml\" ContentType=\"application/xml\"/><Override PartName=\"/xl/workbook.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml\"/><Override PartName=\"/xl/worksheets/sheet1.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml\"/><Override PartName=\"/xl/styles.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml\"/></Types>"),
            Part("_rels/.rels", $"<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"rId1\" Type=\"{Relations}/officeDocument\" Target=\"xl/workbook.xml\"/></Relationships>"),
            Part("xl/workbook.xml", $"<workbook xmlns=\"{Main}\" xmlns:r=\"{Relations}\"><sheets><sheet name=\"{Escape(sheet)}\" sheetId=\"1\" r:id=\"rId1\"/></sheets></workbook>"),
            Part("xl/_rels/workbook.xml.rels", $"<Relationships xmlns=\"http://schemas.openxmlformats.org/package/2006/relationships\"><Relationship Id=\"rId1\" Type=\"{Relations}/worksheet\" Target=\"worksheets/sheet1.xml\"/><Relationship Id=\"rId2\" Type=\"{Relations}/styles\" Target=\"styles.xml\"/></Relationships>"),
            Part("xl/styles.xml", $"<styleSheet xmlns=\"{Main}\"><fonts count=\"2\"><font><sz val=\"11\"/><name val=\"Calibri\"/></font><font><b/><sz val=\"11\"/><name val=\"Calibri\"/></font></fonts><fills count=\"2\"><fill><patternFill patternType=\"none\"/></fill><fill><patternFill patternType=\"gray125\"/></fill></fills><borders count=\"1\"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count=\"1\"><xf numFmtId=\"0\" fontId=\"0\" fillId=\"0\" borderId=\"0\"/></cellStyleXfs><cellXfs count=\"2\"><xf numFmtId=\"49\" fontId=\"0\" fillId=\"0\" borderId=\"0\" xfId=\"0\" applyAlignment=\"1\"><alignment vertical=\"top\" wrapText=\"1\"/></xf><xf numFmtId=\"49\" fontId=\"1\" fillId=\"0\" borderId=\"0\" xfId=\"0\" applyFont=\"1\"/></cellXfs></styleSheet>"),
            Part("xl/worksheets/sheet1.xml", Sheet(rows)),
        ]);
    }

    private static (string, byte[]) Part(string name, string xml) => (name, Encoding.UTF8.GetBytes(Head + xml));

    private static string Sheet(IReadOnlyList<IReadOnlyList<string>> rows)
    {
        var columns = rows.Count == 0 ? 0 : rows.Max(r => r.Count);
        var xml = new StringBuilder($"<worksheet xmlns=\"{Main}\"><sheetViews><sheetView workbookViewId=\"0\"><pane ySplit=\"1\" topLeftCell=\"A2\" activePane=\"bottomLeft\" state=\"frozen\"/></sheetView></sheetViews>");
        if (columns > 0)
        {
            xml.Append("<cols>");
            for (var c = 0; c < columns; c++)
            {
                var widest = Math.Clamp(rows.Max(r => c < r.Count ? r[c].Length : 0) + 2, 8, 60);
                xml.Append(CultureInfo.InvariantCulture, $"<col min=\"{c + 1}\" max=\"{c + 1}\" width=\"{widest}\" customWidth=\"1\"/>");
            }

            xml.Append("</cols>");
        }

        xml.Append("<sheetData>");
        for (var r = 0; r < rows.Count; r++)
        {
            xml.Append(CultureInfo.InvariantCulture, $"<row r=\"{r + 1}\">");
            for (var c = 0; c < rows[r].Count; c++)
                xml.Append(CultureInfo.InvariantCulture, $"<c r=\"{ColumnName(c)}{r + 1}\" s=\"{(r == 0 ? 1 : 0)}\" t=\"inlineStr\"><is><t xml:space=\"preserve\">{Escape(rows[r][c])}</t></is></c>");
            xml.Append("</row>");
        }

        return xml.Append("</sheetData></worksheet>").ToString();
    }

    private static string Escape(string text) => SecurityElement.Escape(PlainText.Clean(text))!;

    /// <summary>A, B, ... Z, AA, AB, ...</summary>
    private static string ColumnName(int index)
    {
        var name = "";
        for (var i = index + 1; i > 0; i = (i - 1) / 26)
            name = (char)('A' + ((i - 1) % 26)) + name;
        return name;
    }
}
