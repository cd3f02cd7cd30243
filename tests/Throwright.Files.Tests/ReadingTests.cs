using Throwright.Files.Saving;
using System.Reflection;
using System.Text;
using Throwright.Engine.Model;
using Throwright.Files.Description;
using Throwright.Shapes.Quantities;

namespace Throwright.Files.Tests;

public class ReadingTests
{
    private static Toleranced<Length> Inches(double value, double half = 0) => new(Length.FromInches(value), half * 0.0254, half * 0.0254);

    private static Toleranced<Angle> Degrees(double value, double minus = 0, double plus = 0) => new(Angle.FromDegrees(value), minus * (Math.PI / 180), plus * (Math.PI / 180));

    [Fact]
    public void BenchFile_Read_FillsTheModel()
    {
        var aircraft = Sound(SoundFiles.Bench);
        Assert.Equal(("Demo", "", ""), (aircraft.Name, aircraft.Builder, aircraft.Note));
        Assert.Equal(new Display { Length = LengthUnit.Inch, Force = ForceUnit.PoundForce, Fraction = 32 }, aircraft.Display);
        Assert.Equal(Yardstick.User, aircraft.Yardstick);
        Assert.Equal(
            new Surroundings { Airframe = AirframeMaterial.Aluminium, Rigged = new(20), Coldest = new(-30), Cabin = new(60), EngineBay = new(95), Elsewhere = new(55) },
            aircraft.Environment);
        var torque = Torque.FromPoundForceInches(9);
        var expected = new Run
        {
            Id = "mixture",
            Label = "MIXTURE",
            How = "PULL FOR LEAN",
            Function = ControlFunction.Mixture,
            SafeEnd = "rich",
            CushionWanted = Length.FromInches(0.125),
            CushionMost = Length.FromInches(1),
            HandForceMost = Force.FromPoundsForce(15),
            CockpitEnd = new()
            {
                Stroke = Inches(2.5, 0.03),
                PushMeans = "rich",
                PullMeans = "lean",
                Knob = KnobShape.Round,
                KnobColour = "black",
                Lock = LockKind.Vernier,
                LockHolds = Force.FromPoundsForce(20),
                Play = Inches(0.01),
            },
            Cable = new()
            {
                Core = new() { Kind = CoreKind.Solid, Diameter = Inches(0.062, 0.001), Material = CoreMaterial.MusicWire },
                Conduit = new()
                {
                    Bore = Inches(0.080, 0.003),
                    Material = ConduitMaterial.CarbonSteel,
                    MinRadius = Length.FromInches(4),
                    PullStiffness = new(Stiffness.FromNewtonsPerMillimetre(400), 40000, 40000),
                    PushStiffness = new(Stiffness.FromNewtonsPerMillimetre(60), 0, 0),
                },
                Friction = new(new(0.15), 0.05, 0.05),
                Length = Inches(48),
                Bends = [new(Degrees(90), Inches(5))],
                LongestStraight = Length.FromInches(14),
                PullLimit = Force.FromPoundsForce(50),
                PushLimit = Force.FromPoundsForce(15),
                KnobDrag = Force.FromPoundsForce(0.5),
                DeviceDrag = Force.FromPoundsForce(0.25),
                Source = "invented",
            },
            LeverEnd = new()
            {
                Radius = Inches(1.5),
                Holes = [Length.FromInches(1.25), Length.FromInches(1.5)],
                ArmWidth = Inches(0.75),
                From = Degrees(-45, 1, 1),
                To = Degrees(45, 2, 2),
                Bench = new() { Distance = Inches(4), Rule = AnchorRule.SquareAtMid },
                Tip = Inches(0.375),
                TipSwivels = Angle.FromDegrees(8),
                BracketStiffness = new(new(2000 * (Force.NewtonsPerPoundForce / 0.0254)), 0, 0),
                Swivel = new()
                {
                    Length = Inches(0.3125),
                    Play = Inches(0.003),
                    Rigged = new(DeviceStop.Push, Inches(0.1875)),
                    HoldsBy = [WireHold.SetScrew, WireHold.BentTail],
                },
                Load = new()
                {
                    TorqueTable =
                    [
                        new(Angle.FromDegrees(-45), new(Torque.FromPoundForceInches(4), 0, 0)),
                        new(Angle.FromDegrees(45), new(torque, torque.NewtonMetres * 20 / 100, torque.NewtonMetres * 20 / 100)),
                    ],
                    Measured = true,
                    Bias = new()
                    {
                        Toward = DeviceStop.Push,
                        Torque = new(Torque.FromPoundForceInches(2), 0, 0),
                        Rate = new(0.02 * (Torque.NewtonMetresPerPoundForceInch * 180 / Math.PI)),
                        Spring = true,
                    },
                    Detents = [new(Angle.FromDegrees(45), Torque.FromPoundForceInches(1), Angle.FromDegrees(5))],
                },
                Zone = HeatZone.EngineBay,
                Valve = new() { BoreRatio = 0.66, Open = DeviceStop.Push, LineLoss = 7 },
            },
        };
        Assert.Equal(expected, aircraft.Runs[1]);
        Assert.Equal(new Run { Id = "cabin-heat", Label = "CABIN HEAT" }, aircraft.Runs[0]);
    }

    [Fact]
    public void SpatialFile_Read_FillsTheModel()
    {
        var aircraft = Sound(SoundFiles.Spatial);
        var pivot = new PointAt(Inches(12), Inches(-3, 1 / 16.0), Inches(4));
        var anchor = new PointAt(Inches(16), Inches(-3), Inches(5.5));
        Assert.Equal([new("flap-pivot", pivot), new("flap-anchor", anchor)], aircraft.Points);
        Assert.Equal(
            new PlacedAnchor
            {
                Pivot = pivot with { Name = "flap-pivot" },
                Axis = new(0, 1, 0.25),
                Zero = new(0, 0, 1),
                AlongAxis = new(Length.FromMillimetres(2), 0, 0),
                Anchor = anchor with { Name = "flap-anchor" },
                Along = new(-1, 0, 0),
            },
            aircraft.Runs[0].LeverEnd!.Placed);

        // One angle, 90 deg +4/-2 deg: each stop has half of the tolerance, toward and away from the other.
        Assert.Equal(Degrees(-45, 2, 1), aircraft.Runs[0].LeverEnd!.From);
        Assert.Equal(Degrees(45, 1, 2), aircraft.Runs[0].LeverEnd!.To);
        Assert.Equal(new(Length.FromMillimetres(60), 0.001, 0.001), aircraft.Runs[0].LeverEnd!.Swivel.At);
    }

    [Fact]
    public void SmallestFile_Read_IsTheModelsOwnDefaults()
    {
        Assert.Equal(new Aircraft { Name = "A" }, Sound("{\"format\":1,\"aircraft\":{\"name\":\"A\"}}"));
        var run = Sound("""{"format":1,"aircraft":{"name":"A"},"runs":[{"id":"a","cockpitEnd":{},"cable":{"core":{"diameter":"1 mm"},"conduit":{}},"leverEnd":{"load":{},"swivel":{},"arm":{},"anchor":{},"valve":{"boreRatio":"0.5","open":"pull"}}}]}""").Runs[0];
        Assert.Equal(
            new Run
            {
                Id = "a",
                CockpitEnd = new(),
                Cable = new() { Core = new() { Diameter = new(Length.FromMillimetres(1), 0, 0) }, Conduit = new() },
                LeverEnd = new() { Load = new(), Valve = new() { BoreRatio = 0.5, Open = DeviceStop.Pull } },
            },
            run);
    }

    [Fact]
    public void Words_OfTheFile_CoverEveryValueOfTheModel()
    {
        var sets = new List<IWords>();
        Walk(AircraftDescription.File);
        Assert.Equal(typeof(Aircraft).Assembly.GetTypes().Count(t => t.IsEnum && t.Namespace == typeof(Aircraft).Namespace), sets.Count);
        Assert.All(sets, s => Assert.True(s.IsComplete, string.Join(", ", s.Words)));

        void Walk(Shape shape)
        {
            if (shape is IWords words && !sets.Contains(words))
                sets.Add(words);
            foreach (var inside in shape.Inside)
                Walk(inside);
        }
    }

    [Fact]
    public void EveryPropertyOfTheModel_CanBeWrittenInTheFile()
    {
        var everything = SoundFiles.Bench;
        foreach (var (was, now) in ((string, string)[])
        [
            ("\"builder\": \"\", \"note\": \"\"", "\"builder\": \"B\", \"note\": \"N\""), ("\"length\": \"in\"", "\"length\": \"mm\""), ("\"force\": \"lbf\"", "\"force\": \"N\""),
            ("\"aluminium\"", "\"wood\""), ("\"emergency\": false", "\"emergency\": true"), ("\"note\": \"\"", "\"note\": \"N\""), ("\"round\"", "\"tHandle\""),
            ("\"solid\"", "\"strand7x7\""), ("\"musicWire\"", "\"stainless302\""), ("\"carbonSteel\"", "\"stainless302\""),
            ("\"rule\": \"squareAtMid\"", "\"rule\": \"offset\", \"offset\": \"1 in\""), ("\"open\": \"push\"", "\"open\": \"pull\""),
            ("\"stop\": \"push\"", "\"stop\": \"pull\""), ("\"toward\": \"push\"", "\"toward\": \"pull\""),
        ])
        {
            Assert.Contains(was, everything, StringComparison.Ordinal);
            everything = everything.Replace(was, now, StringComparison.Ordinal);
        }

        // A property that is never anything but its default has no member in the file, or the reader forgets it.
        var model = typeof(Aircraft).Assembly.GetTypes().Where(t => t.Namespace == typeof(Aircraft).Namespace && !t.IsEnum && t.IsPublic).ToList();
        var filled = new HashSet<string>();
        Walk(Sound(everything));
        Walk(Sound(SoundFiles.Spatial));
        Walk(Sound(SoundFiles.Cockpit));
        Walk(Sound(SoundFiles.Routed));
        Walk(Sound(SoundFiles.Installed));
        Walk(Sound(SoundFiles.Spatial.Replace("\"torque\": \"6 lbf in\"", "\"torqueTable\": [[\"1 deg\", \"1 N m\"], [\"2 deg\", \"1 N m\"]]", StringComparison.Ordinal)));
        Assert.Equal(
            model.SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Instance)).Where(p => !p.GetMethod!.IsAbstract).Select(p => $"{p.DeclaringType!.Name}.{p.Name}").Distinct().Order(),
            filled.Order());

        void Walk(object value)
        {
            if (value is System.Collections.IEnumerable list and not string)
            {
                foreach (var item in list)
                    Walk(item);
            }

            if (!model.Contains(value.GetType()))
                return;
            foreach (var property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance))
            {
                if (property.GetValue(value) is not { } inside)
                    continue;
                var isEmpty = inside is System.Collections.IEnumerable entries && !entries.Cast<object>().Any();
                if (!isEmpty && !(property.PropertyType.IsValueType && inside.Equals(Activator.CreateInstance(property.PropertyType))))
                    filled.Add($"{property.DeclaringType!.Name}.{property.Name}");
                Walk(inside);
            }
        }
    }

    [Fact]
    public void Faults_OfAllKinds_AreToldAtOnceInOrder()
    {
        const string text = """
            {
              "format": 1,
              "aircraft": { "name": "Demo" },
              "runs": [
                {
                  "id": "a",
                  "lable": "A",
                  "cable": {
                    "core": { "kind": "rope", "diameter": "2 mm" },
                    "conduit": { "bore": "1.5 mm", "minRadius": 4 },
                    "friction": "-1"
                  },
                  "leverEnd": { "sweep": { "from": "10 deg", "to": "5 deg" }, "axis": [0, 0, 0] }
                },
                { "id": "b" },
                { "label": "C" }
              ]
            }
            """;
        var result = AircraftFile.Parse("x", text);
        Assert.Equal(
            [
                "$.runs[0].lable", "$.runs[0].cable.core.kind", "$.runs[0].cable.conduit.bore", "$.runs[0].cable.conduit.minRadius", "$.runs[0].cable.friction",
                "$.runs[0].leverEnd.pivot", "$.runs[0].leverEnd.arm.zero", "$.runs[0].leverEnd.anchor.at", "$.runs[0].leverEnd.sweep.from", "$.runs[0].leverEnd.axis",
                "$.runs[2].id",
            ],
            result.Problems.Select(p => p.JsonPath));
        Assert.Equal([new(0, "a"), new(2, "C")], result.RunsLeftOut);
        Assert.Equal(["b"], result.Aircraft!.Runs.Select(r => r.Id));
        Assert.False(result.IsSound);
        Assert.Equal("the arm at the lever end", AircraftFile.Parse("x", SoundFiles.Bench.Replace("1 1/2 in\", \"holes", "1,5 in\", \"holes", StringComparison.Ordinal)).Problems[0].Part);
    }

    [Fact]
    public void FaultBesideTheRuns_LeavesNoAircraft()
    {
        // With a doubtful yardstick or temperature, no run could be judged.
        var result = AircraftFile.Parse("x", SoundFiles.Bench.Replace("\"user\"", "\"mine\"", StringComparison.Ordinal));
        Assert.Null(result.Aircraft);
        Assert.Empty(result.RunsLeftOut);
    }

    [Fact]
    public void PointAtFault_LeavesOutTheRunsThatReferToIt()
    {
        var text = SoundFiles.Spatial.Replace("\"5.5 in\"", "5.5", StringComparison.Ordinal).Replace("\"runs\": [", "\"runs\": [ { \"id\": \"b\" },", StringComparison.Ordinal);
        var result = AircraftFile.Parse("x", text);
        Assert.Equal("$.points['flap-anchor'][2]", Assert.Single(result.Problems).JsonPath);
        Assert.Equal([new(1, "cowl-flap")], result.RunsLeftOut);
        Assert.Equal(["b"], result.Aircraft!.Runs.Select(r => r.Id));
        Assert.Equal(["flap-pivot"], result.Aircraft.Points.Select(p => p.Name));
    }

    [Fact]
    public void TwoRunsOfOneId_AreBothLeftOut()
    {
        var result = AircraftFile.Parse("x", """{"format":1,"aircraft":{"name":"A"},"runs":[{"id":"a"},{"id":"b"},{"id":"a"}]}""");
        Assert.Equal([0, 2], result.RunsLeftOut.Select(r => r.Index));
        Assert.Equal(["b"], result.Aircraft!.Runs.Select(r => r.Id));
    }

    [Fact]
    public void RunWithoutName_IsCalledByItsNumber()
    {
        var result = AircraftFile.Parse("x", """{"format":1,"aircraft":{"name":"A"},"runs":[{"id":"a"},7]}""");
        Assert.Equal([new(1, "run 2")], result.RunsLeftOut);
    }

    [Fact]
    public void NewerFormat_HidesEveryOtherFault()
    {
        var problem = Assert.Single(AircraftFile.Parse("x", "{\"format\": 2, \"wings\": 2}").Problems);
        Assert.Equal("this file is of format 2; this program reads up to 1", problem.Found);
    }

    [Theory]
    [InlineData("\uFEFF")]
    [InlineData("// a comment\n")]
    [InlineData("/* a\n comment */ ")]
    public void Front_OfTheFile_MayHoldMarkAndComments(string front)
    {
        Assert.NotNull(AircraftFile.Parse("x", front + SoundFiles.Spatial).Aircraft);

        // A byte order mark takes no column.
        var problem = Assert.Single(AircraftFile.Parse("x", front + "{\"format\":1,\"aircraft\":{\"name\":1}}").Problems);
        var before = (front + "{\"format\":1,\"aircraft\":{\"name\":").Replace("\uFEFF", "", StringComparison.Ordinal);
        Assert.Equal((before.Count(c => c == '\n') + 1, before.Length - before.LastIndexOf('\n')), (problem.Line, problem.Column));
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Lines_OfAnySystem_AreCountedAlike(string end)
    {
        var text = SoundFiles.Bench.ReplaceLineEndings(end).Replace("\"1/8 in\"", "0.125", StringComparison.Ordinal);
        var problem = Assert.Single(AircraftFile.Parse("x", text).Problems);
        Assert.Equal((23, 30), (problem.Line, problem.Column));
        Assert.Equal("\"cushion\": { \"wanted\": 0.125, \"most\": \"1 in\" },", problem.LineText);
        Assert.Equal((23, 5), (problem.MarkStart, problem.MarkLength));
    }

    [Fact]
    public void CommentsAndTrailingCommas_AreAllowedAnywhere()
    {
        var text = SoundFiles.Bench.Replace("[\"setScrew\", \"bentTail\"]", "[/* a */\"setScrew\"/* b */,// c\n\"bentTail\",/* d */]", StringComparison.Ordinal)
            .Replace("\"note\": \"\" }", "\"note\" /* e */ : /* f */ \"\", }", StringComparison.Ordinal);
        Assert.Equal(Sound(SoundFiles.Bench), Sound(text));
    }

    [Fact]
    public void OneLongLine_IsShownAroundTheFault()
    {
        var text = string.Join(' ', SoundFiles.Bench.Split('\n').Select(l => l.Trim())).Replace("\"4 in\", \"rule\"", "4, \"rule\"", StringComparison.Ordinal);
        var problem = Assert.Single(AircraftFile.Parse("x", text).Problems);
        Assert.InRange(problem.LineText.Length, 100, 160);
        Assert.Equal("4", problem.LineText.Substring(problem.MarkStart, problem.MarkLength));
    }

    [Fact]
    public void ControlCharacters_InTheFile_DoNotReachThePerson()
    {
        var problems = AircraftFile.Parse("x", "{\"format\":1,\"aircraft\":{\"name\":\"\u001b[31mA\u202Eb\"}, \"\u009b2J\": 1, \"runs\": [{\"label\":\"\u0007\"}]}").Problems;
        Assert.NotEmpty(problems);
        Assert.All(problems, p => Assert.DoesNotContain(p.LineText + p.Found + p.Expected + p.Run + p.JsonPath, c => char.IsControl(c) || c == '\u202E'));
    }

    [Fact]
    public void Limits_AreToldAndKept()
    {
        Refused(new string(' ', (4 * 1024 * 1024) + 1), "larger than 4 MB");
        Refused(new string('[', 33), "nested deeper than 32");
        Refused("[" + string.Concat(Enumerable.Repeat("0,", 200_001)) + "]", "more than 200000 values");
        Refused($"{{\"format\":1,\"aircraft\":{{\"name\":\"{new string('a', 10_001)}\"}}}}", "a text of 10001 characters");
        Refused($"{{\"format\":1,\"aircraft\":{{\"name\":\"A\"}},\"runs\":[{string.Join(',', Enumerable.Range(0, 1001).Select(i => $"{{\"id\":\"a{i}\"}}"))}]}}", "1001 runs");
        Assert.NotNull(AircraftFile.Parse("x", $"{{\"format\":1,\"aircraft\":{{\"name\":\"A\"}},\"runs\":[{string.Join(',', Enumerable.Range(0, 1000).Select(i => $"{{\"id\":\"a{i}\"}}"))}]}}").Aircraft);
        Refused(new string('[', 32) + new string(']', 32), "a list [ ... ]");

        static void Refused(string text, string found)
        {
            var result = AircraftFile.Parse("x", text);
            Assert.Contains(found, Assert.Single(result.Problems).Found, StringComparison.Ordinal);
            Assert.Null(result.Aircraft);
        }
    }

    [Fact]
    public void ThousandsOfFaults_AreCountedAndTheFirstListed()
    {
        var text = $"{{\"format\":1,\"aircraft\":{{\"name\":\"A\"}},\"runs\":[{string.Join(',', Enumerable.Range(0, 1000).Select(i => $"{{\"id\":\"a{i}\",\"x\":1,\"y\":2}}"))}]}}";
        var result = AircraftFile.Parse("x", text);
        Assert.Equal((1000, 1000), (result.Problems.Count, result.Unlisted));
        Assert.Equal(1000, result.RunsLeftOut.Count);
        Assert.Empty(result.Aircraft!.Runs);
    }

    [Theory]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x7B, 0 }, 0, 0, "UTF-16")]
    [InlineData(new byte[] { 0x7B, 0x0A, 0x20, 0xE9, 0x7D }, 2, 2, "the byte E9 is no UTF-8 text")]
    [InlineData(new byte[] { 0x7B, 0xC3 }, 1, 2, "the byte C3 is no UTF-8 text")]
    [InlineData(new byte[] { }, 1, 1, "the file is empty")]
    [InlineData(new byte[] { 0x7B, 0x00, 0x7D }, 1, 2, "the character U+0000")]
    public void Bytes_ThatAreNoText_AreRefused(byte[] bytes, int line, int column, string found)
    {
        var problem = Assert.Single(AircraftFile.Read("x", bytes).Problems);
        Assert.Equal((line, column), (problem.Line, problem.Column));
        Assert.Contains(found, problem.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void HalfACharacterInAComment_IsRefused()
    {
        // It could be read, but not written again.
        Assert.Equal("half a character", Assert.Single(AircraftFile.Parse("x", SoundFiles.Bench + "// \uD800").Problems).Found);
    }

    [Fact]
    public void Examples_ReadWithoutProblems()
    {
        var examples = Directory.EnumerateFiles(RepositoryFolder.Path("examples"), "*" + AircraftFile.Extension, SearchOption.AllDirectories).ToList();
        Assert.NotEmpty(examples);
        Assert.All(examples, path =>
        {
            Assert.Empty(AircraftFile.Read(path).Problems);
            Assert.True(PublishedSchema.Accepts(File.ReadAllText(path)), path);
        });
    }

    [Theory]
    [InlineData("mixture", 1)]
    [InlineData("cabin-heat", 0)]
    [InlineData("none", null)]
    public void RunIndex_OfAnId_IsItsPlaceInTheList(string id, int? index) => Assert.Equal(index, AircraftFile.RunIndex(SoundFiles.Bench, id));

    [Fact]
    public void FileThatIsNotThere_IsAProblem()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            Assert.Equal("no such file", Assert.Single(AircraftFile.Read(Path.Combine(folder.FullName, "a")).Problems).Found);
            Assert.Equal("no such file", Assert.Single(AircraftFile.Read(Path.Combine(folder.FullName, "b", "a")).Problems).Found);
            Assert.Equal("a folder, not a file", Assert.Single(AircraftFile.Read(folder.FullName).Problems).Found);
            Assert.Contains("can't be opened", Assert.Single(AircraftFile.Read("a\0b").Problems).Found, StringComparison.Ordinal);
            var path = Path.Combine(folder.FullName, "a.throwright.json");
            File.WriteAllText(path, SoundFiles.Spatial);
            var read = AircraftFile.Read(path);
            Assert.True(read.IsSound);
            Assert.Equal(SoundFiles.Spatial, read.Text);
            Assert.Equal(FileStamp.Of(Encoding.UTF8.GetBytes(SoundFiles.Spatial)), read.Stamp);
            File.WriteAllBytes(path, new byte[(4 * 1024 * 1024) + 1]);
            Assert.Contains("4 MB", Assert.Single(AircraftFile.Read(path).Problems).Found, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Aircraft Sound(string text)
    {
        var result = AircraftFile.Parse("x", text);
        Assert.Empty(result.Problems);
        Assert.Empty(result.RunsLeftOut);
        Assert.NotNull(result.Aircraft);
        return result.Aircraft;
    }
}
