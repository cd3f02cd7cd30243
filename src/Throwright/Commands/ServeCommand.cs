using System.CommandLine;
using System.Diagnostics;
using System.Net.Sockets;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Throwright.Files;
using Throwright.Web;
using Throwright.Web.Editing;
using Throwright.Web.Host;

namespace Throwright.Cli.Commands;

/// <summary>throwright serve: the page, on this computer only.</summary>
internal static class ServeCommand
{
    public static Command Make()
    {
        var file = new Argument<string?>("file") { Description = "Aircraft file, or a folder of them. Left out: the folder you are in.", Arity = ArgumentArity.ZeroOrOne };
        var port = new Option<int>("--port") { Description = "Port on this computer; 0: any free one.", DefaultValueFactory = _ => 5180 };
        port.Validators.Add(r =>
        {
            if (r.Tokens is [var token, ..] && !(int.TryParse(token.Value, System.Globalization.CultureInfo.InvariantCulture, out var value) && value is >= 0 and <= 65535))
                r.AddError($"--port \"{token.Value}\": a whole number from 0 to 65535 is expected");
        });
        var open = new Option<bool>("--open") { Description = "Open the page in the browser." };
        var command = new Command("serve", "Show the page: see, change and cure in a browser on this computer. Nothing leaves it.") { file, port, open };
        command.SetAction((parsed, cancel) => Serve(parsed.GetValue(file), parsed.GetValue(port), parsed.GetValue(open), cancel));
        return command;
    }

    private static async Task<int> Serve(string? named, int port, bool open, CancellationToken cancel)
    {
        if (!PageFiles.AreThere)
        {
            await Console.Error.WriteLineAsync("This program was built without its page (SkipWeb). Build it again with Node.js 20 or newer: dotnet build").ConfigureAwait(false);
            return ExitCode.Unusable;
        }

        var path = Path.GetFullPath(named ?? ".");
        string? first = null;
        if (!Directory.Exists(path))
        {
            var name = Path.GetFileName(path);
            if (!File.Exists(path) || !name.EndsWith(AircraftFile.Extension, StringComparison.Ordinal))
            {
                await Console.Error.WriteLineAsync(File.Exists(path) ? $"{named}: an aircraft file ends in {AircraftFile.Extension}." : $"{named}: no such file or folder.").ConfigureAwait(false);
                return ExitCode.Unusable;
            }

            first = name[..^AircraftFile.Extension.Length];
            path = Path.GetDirectoryName(path)!;
        }

        using var folder = new AircraftFolder(path, first);
        await using var app = WebApp.Build(folder, port);
        try
        {
            await app.StartAsync(cancel).ConfigureAwait(false);
        }
        catch (IOException e) when (e.InnerException is SocketException or Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            await Console.Error.WriteLineAsync($"Port {port} is in use. Another page may be open there; or choose another: --port 0").ConfigureAwait(false);
            return ExitCode.Unusable;
        }

        var address = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        Console.Out.WriteLine($"The page is at {address}  (this computer only)");
        Console.Out.WriteLine($"Files are read and written in {path}");
        Console.Out.WriteLine("Ctrl+C stops it. Every change is saved as you make it.");
        if (open)
            Open(address);
        try
        {
            await Task.Delay(Timeout.Infinite, cancel).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            // Ctrl+C: the way to end it.
        }

        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(2));
        await app.StopAsync(patience.Token).ConfigureAwait(false);
        return ExitCode.Stopped;
    }

    private static void Open(string address)
    {
        try
        {
            Process.Start(new ProcessStartInfo(address) { UseShellExecute = true })?.Dispose();
        }
        catch (Exception e) when (e is System.ComponentModel.Win32Exception or PlatformNotSupportedException)
        {
            Console.Error.WriteLine("No browser could be opened from here; type the address in.");
        }
    }
}
