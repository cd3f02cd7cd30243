using System.Text;
using Throwright.Engine.Findings;
using Throwright.Engine.Make;
using Throwright.Engine.Model;
using Throwright.Formats.Drawing;
using Throwright.Formats.Dxf;
using Throwright.Formats.Gltf;
using Throwright.Formats.Pdf;
using Throwright.Formats.Step;
using Throwright.Formats.Stl;
using Throwright.Formats.ThreeMf;
using Throwright.Papers.Marks;
using Throwright.Shapes;
using Throwright.Shapes.Quantities;
using Throwright.Shapes.Solids;

namespace Throwright.Papers.Make;

/// <summary>One file to be written.</summary>
/// <param name="What">What it is and who reads it.</param>
/// <param name="Check">What was checked on its content, with the figure.</param>
public sealed record ShopFile(string Name, ReadOnlyMemory<byte> Content, string What, string Check);

/// <summary>Parts and drawings that belong together, with the cautions that go with them.</summary>
/// <param name="Name">wedge, template, guide, bracket, marking.</param>
public sealed record ShopSet(string Name, EquatableList<ShopFile> Files, EquatableList<string> Cautions);

/// <summary>How the files shall be.</summary>
public sealed record ShopChoice(ShopPaper Paper, DateOnly Dated)
{
    public StepSchema Schema { get; init; } = StepSchema.Ap214;

    /// <summary>Largest distance of printed triangles from the round faces, m.</summary>
    public double PrintChord { get; init; } = 0.01e-3;
}

/// <summary>Writes what a shop needs of each part: solids for CAD and printers, drawings for paper and for cutters.</summary>
/// <remarks>A file whose own audit finds anything is never handed out.</remarks>
public static class ShopFiles
{
    private const double ViewChord = 0.05e-3;

    private static readonly Colour Metal = new(0xB8, 0xC0, 0xC4), Blue = new(0x8F, 0x9B, 0xD8);

    public static ShopSet Wedge(WedgePair pair, string id, ShopTitle title, FigureWriter say, ShopChoice choice)
    {
        var washer = pair.Washer;
        var solid = washer.Build();
        var files = new List<ShopFile>();
        files.AddRange(Solids($"{id}-wedge", solid, washer.Volume, washer.ThroughHoles, 2, title, choice, "one wedge; make two", mesh => mesh.Flipped()));
        var place = PairInPlace.Of(pair);
        files.Add(Scene($"{id}-wedge-pair", [new("wedge", solid, Blue, [place.Front, place.Back]), new("sheet", place.Sheet.Build(), Metal, [place.SheetAxes])], "the pair on a piece of the sheet, for looking at"));
        Picture part = WedgeDrawing.Part(pair, say, title, choice.Paper), both = WedgeDrawing.Pair(pair, say, title, choice.Paper);
        files.Add(Pdf($"{id}-wedge", title.Part, [new(part, "The part"), new(both, "The pair"), new(DrillTemplateDrawing.Of(pair, say, title with { Part = title.Part.Replace("Wedge", "Hole", StringComparison.Ordinal), Number = title.Number.EndsWith('W') ? title.Number[..^1] + "H" : title.Number }, choice.Paper), "Drill template, true size")], choice, "part, pair and drill template"));
        files.AddRange(Drawings($"{id}-wedge-part", part, "drawing of the part"));
        files.AddRange(Drawings($"{id}-wedge-pair", both, "drawing of the pair"));
        var cautions = new List<string>();
        if (pair.Case.Stock == WedgeStock.Printed)
            cautions.Add("The file says printed: use these to try the fit. A nut squeezes plastic until it comes loose, the more so in a cabin heated by the sun. The lasting pair is of metal.");
        else
            cautions.Add("STL and 3MF are for a printed test piece: a fit check, nothing that stays in a warm cabin under a nut. The lasting pair is machined of metal from STEP and drawing.");
        cautions.Add("Both wedges are the same part. A mirrored one leans the other way.");
        if (pair.ThreadBeyondNut is null)
            cautions.Add($"Whether the thread reaches is not known: the stack is {say.Length(pair.Grip, Rounding.Up)} thick.");
        return new("wedge", files.ToEquatableList(), cautions.ToEquatableList());
    }

    public static ShopSet Template(WedgePair pair, string id, ShopTitle title, FigureWriter say, ShopChoice choice)
    {
        var picture = DrillTemplateDrawing.Of(pair, say, title, choice.Paper);
        return new(
            "template",
            [
                Pdf($"{id}-template", title.Part, [new(picture, "Drill template, true size")], choice, "hole in the sheet at true size"),
                .. Drawings($"{id}-template", picture, "the same for a cutter or a screen"),
            ],
            ["Print without scaling, and measure both 100 mm bars before drilling.", "Look behind the sheet for wires, lines and structure before drilling."]);
    }

    public static ShopSet Guide(WedgePair pair, string id, ShopTitle title, FigureWriter say, ShopChoice choice)
    {
        var guide = DrillGuide.Of(pair);
        return new(
            "guide",
            [.. Solids($"{id}-guide", guide.Block.Build(), guide.Block.Volume, guide.Block.Holes.Count, 1, title, choice, $"block that leads a drill of {say.Length(guide.Drill)} along the lean", mesh => mesh)],
            [
                $"Lay the block's lower face on the side toward the pilot, the hole's lower mouth over the mark, and turn it until the hole comes toward you leaning {WedgeDrawing.LeanOf(pair.Case.Tilt, say)}: turned about, it drills the wrong way. Clamp it. Start with a small drill in a bush.",
                "A hole drilled along the shank is round about it: then no slot is filed.",
                "A drill cuts a printed block: keep it cool and let it wear one hole only.",
            ]);
    }

    public static ShopSet Bracket(Bracket bracket, string id, ShopTitle title, FigureWriter say, ShopChoice choice)
    {
        var part = bracket.Part;
        var solid = part.Build();
        Picture bent = BracketDrawing.Of(bracket, say, title, choice.Paper), flat = FlatPatternDrawing.Of(bracket, say, title, choice.Paper);
        return new(
            "bracket",
            [
                .. Solids($"{id}-bracket", solid, part.Volume, part.ThroughHoles, 1, title, choice, "the bent bracket", mesh => mesh),
                Scene($"{id}-bracket", [new("bracket", solid, Metal, [Axes.World])], "the bent bracket, for looking at"),
                Pdf($"{id}-bracket", title.Part, [new(bent, "The bracket"), new(flat, "Flat pattern, true size")], choice, "drawing, and flat pattern at true size"),
                .. Drawings($"{id}-bracket-flat", flat, "flat pattern for a cutter or a screen"),
            ],
            [
                "Bend a scrap strip of the same sheet first and measure it: it gives your own neutral line.",
                "Strength of bracket and structure belongs to a qualified person; what is worked out here is how far it gives and what its fasteners carry.",
            ]);
    }

    public static ShopSet Mark(Marking marking, string id, ShopTitle title, FigureWriter say, ShopChoice choice)
    {
        Picture plate = MarkingDrawing.Plate(marking), page = MarkingDrawing.Page(marking, say, title, choice.Paper);
        return new(
            "marking",
            [
                .. Drawings($"{id}-marking", plate, "lettering of single strokes, nothing else"),
                Pdf($"{id}-marking", $"Marking of {marking.Label}", [new(page, "Marking, true size")], choice, "lettering at true size with bars"),
            ],
            ["A control is marked with what it is and how it is worked. No control but an emergency control is red.", "Place it beside the knob, where no knob or hand hides it."]);
    }

    /// <summary>STEP, STL and 3MF of one body.</summary>
    private static IEnumerable<ShopFile> Solids(string name, Solid solid, double volume, int throughHoles, int count, ShopTitle title, ShopChoice choice, string what, Func<Mesh, Mesh> lay)
    {
        var step = StepWriter.Write(solid, new(title.Number, title.Part, choice.Dated), choice.Schema);
        Sound($"{name}.step", StepReader.Audit(step, volume, throughHoles));
        var mm3 = FigureText.Plain(volume * 1e9, 1);
        yield return new($"{name}.step", Bytes(step), $"STEP {(choice.Schema == StepSchema.Ap242 ? "AP242" : "AP214")}: {what}", $"read back: one closed shell, {throughHoles} through {(throughHoles == 1 ? "hole" : "holes")}, {mm3} mm3 as the closed form");
        var mesh = lay(Mesh.Of(solid, choice.PrintChord));
        var off = (mesh.Volume / volume) - 1;
        Sound($"{name}.stl", mesh.OpenEdges == 0 && Math.Abs(off) < 0.01 ? [] : [$"{mesh.OpenEdges} open edges, volume off by {off:P3}"]);
        var check = $"{mesh.Triangles.Count} triangles, no open edge, volume off by {FigureText.Plain(100 * Math.Abs(off), 3)} %";
        yield return new($"{name}.stl", StlWriter.Binary(mesh, title.Number), "STL in mm, for a printer", check);
        yield return new($"{name}.3mf", ThreeMfWriter.Write([new(title.Number, mesh, count)], title.Part), $"3MF in mm, for a printer{(count > 1 ? $": {count} pieces" : "")}", check);
    }

    private static ShopFile Scene(string name, IReadOnlyList<ScenePart> parts, string what) =>
        new($"{name}.glb", GlbWriter.Write(parts, ViewChord), $"glTF: {what}", "exact normals; not for making");

    private static ShopFile Pdf(string name, string title, IReadOnlyList<PdfPage> pages, ShopChoice choice, string what) => new(
        $"{name}.pdf",
        PdfWriter.Write(new(title) { Subject = what, Date = new(choice.Dated, TimeOnly.MinValue, TimeSpan.Zero) }, pages, Palettes.Print),
        $"PDF, {pages.Count} {(pages.Count == 1 ? "page" : "pages")}: {what}",
        "true size, faces embedded");

    private static IEnumerable<ShopFile> Drawings(string name, Picture picture, string what)
    {
        yield return new($"{name}.svg", Bytes(SvgWriter.Write(picture, Palettes.Paper)), $"SVG: {what}", "true size in mm");
        yield return new($"{name}.dxf", Bytes(DxfWriter.Write(picture, DxfEdition.R2000)), $"DXF R2000: {what}", "states mm");
        yield return new($"{name}-r12.dxf", Bytes(DxfWriter.Write(picture, DxfEdition.R12)), $"DXF R12: {what}", "1 unit = 1 mm, not stated in the format");
    }

    private static void Sound(string name, IReadOnlyList<string> faults)
    {
        if (faults.Count > 0)
            throw new InvalidOperationException($"{name} is not written: its own audit found {string.Join("; ", faults)}.");
    }

    private static ReadOnlyMemory<byte> Bytes(string text) => Encoding.UTF8.GetBytes(text);
}
