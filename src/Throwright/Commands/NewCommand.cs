using System.CommandLine;
using Throwright.Files;

namespace Throwright.Cli.Commands;

/// <summary>throwright new: a starter file with every member explained.</summary>
internal static class NewCommand
{
    public static Command Make()
    {
        var file = new Argument<string>("file") { Description = $"Where to write it; {AircraftFile.Extension} is added." };
        var name = new Option<string?>("--name") { Description = "Name of the aircraft; else the file's name." };
        var command = new Command("new", "Write a commented starter file for one control.") { file, name };
        command.SetAction(parsed =>
        {
            var path = parsed.GetValue(file)!;
            if (!path.EndsWith(AircraftFile.Extension, StringComparison.Ordinal))
                path += AircraftFile.Extension;
            var title = parsed.GetValue(name) ?? Path.GetFileName(path)[..^AircraftFile.Extension.Length];
            if (File.Exists(path))
            {
                Console.Error.WriteLine($"{path} is there already; nothing was written.");
                return ExitCode.Unusable;
            }

            var saved = AircraftFile.Save(path, StarterFile.Text(title), readAs: null);
            if (!saved.IsSaved)
            {
                Console.Error.WriteLine(saved.Message);
                return ExitCode.Unusable;
            }

            Console.Out.WriteLine($"Wrote {path}: one invented mixture control to change into yours.");
            Console.Out.WriteLine($"Next: throwright check {Terminal.CheckScreen.Shell(path)}");
            return ExitCode.Clear;
        });
        return command;
    }
}
