package app.sumpbook.ui

import app.sumpbook.core.Phone
import app.sumpbook.core.PhoneInterface
import java.lang.reflect.InvocationTargetException
import java.lang.reflect.Proxy
import java.util.concurrent.ConcurrentHashMap

/** A phone whose calls are watched: on which thread each was made. */
class Watched(phone: Phone) {
    /** Calls by thread. */
    val on = ConcurrentHashMap<Thread, Int>()

    /** The same phone. */
    val phone: PhoneInterface = Proxy.newProxyInstance(javaClass.classLoader, arrayOf(PhoneInterface::class.java)) { _, method, with ->
        on.merge(Thread.currentThread(), 1, Int::plus)
        try {
            method.invoke(phone, *(with ?: emptyArray()))
        } catch (why: InvocationTargetException) {
            throw why.targetException
        }
    } as PhoneInterface
}
