using HomeLine.Web.CommandLine;

if (ConsoleCommands.Handle(args)) return ConsoleCommands.Run(args);
var builder = WebApplication.CreateBuilder(args);
var app = builder.Build();
app.Run();
return 0;
