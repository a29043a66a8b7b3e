// The least that a Qt Quick program can show, for the start-up row.

#include <QGuiApplication>
#include <QQmlApplicationEngine>

int main(int argc, char* argv[]) {
    const QGuiApplication app{argc, argv};
    QQmlApplicationEngine engine;
    engine.loadData("import QtQuick\nimport QtQuick.Window\nWindow { width: 1280; height: 800; visible: true }");
    return engine.rootObjects().isEmpty() ? 1 : QGuiApplication::exec();
}
